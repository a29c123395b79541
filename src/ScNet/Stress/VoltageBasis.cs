namespace ScNet.Stress;

/// <summary>What a voltage, or the bounds of one, rest on; the more certain first.</summary>
public enum VoltageBasis
{
    /// <summary>Nothing bounds it.</summary>
    Undetermined,

    /// <summary>Kirchhoff's voltage law fixes it.</summary>
    Fixed,

    /// <summary>A capacitor that the mode leaves idle takes part; it keeps what another mode left it with.</summary>
    Idle,

    /// <summary>Loops of different sums meet; the bounds hold for any resistances of the closed switches.</summary>
    Surge,

    /// <summary>A terminal floats; the bounds follow from what held it before and from what its open switches may leak to.</summary>
    Floating,
}
