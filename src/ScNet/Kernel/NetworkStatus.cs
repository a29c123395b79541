namespace ScNet.Kernel;

/// <summary>What became of an attempt to solve a network.</summary>
internal enum NetworkStatus
{
    /// <summary>The loops fix the voltage of every port, and topology decides the charges.</summary>
    Solved,

    /// <summary>The loops fix the voltage of every port, but leave charge free to circulate; component values decide how much does.</summary>
    Circulating,

    /// <summary>The voltage of some port does not follow from the given ones.</summary>
    Open,

    /// <summary>The loops contradict each other whatever the given voltages are, or tie given ones to each other.</summary>
    Contradictory,

    /// <summary>In some phase a held current has no path.</summary>
    Interrupted,

    /// <summary>Machine integers do not hold a value; solve on big integers.</summary>
    Overflown,
}
