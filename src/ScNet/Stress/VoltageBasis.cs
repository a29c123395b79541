namespace ScNet.Stress;

/// <summary>What a voltage, or the bounds of one, rest on.</summary>
public enum VoltageBasis
{
    /// <summary>Nothing bounds it.</summary>
    Undetermined,

    /// <summary>Kirchhoff's voltage law fixes it.</summary>
    Fixed,

    /// <summary>Loops of different sums meet; the bounds hold for any resistances of the closed switches.</summary>
    Surge,

    /// <summary>A terminal floats; the bounds follow from the <see cref="FloatingAssumption"/>.</summary>
    Floating,
}
