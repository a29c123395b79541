namespace ScNet.Design.Regulation;

/// <summary>Whether a mode holds an output voltage, and if not, why.</summary>
public enum RegulationOutcome
{
    /// <summary>By a frequency or a duty within its range.</summary>
    Held,

    /// <summary>At the floor of the frequency, with cycles left out.</summary>
    HeldBySkipping,

    /// <summary>At a fixed frequency or duty with the surplus voltage dropped in its switches or a linear element.</summary>
    HeldByDropping,

    /// <summary>The ratio is too low: even without load the output stays below what is wanted.</summary>
    RatioTooLow,

    /// <summary>The output impedance is too high: not even the fast limit or the ceiling of the frequency would do.</summary>
    ImpedanceTooHigh,

    /// <summary>No duty of its range gives the voltage.</summary>
    DutyOutOfRange,
}
