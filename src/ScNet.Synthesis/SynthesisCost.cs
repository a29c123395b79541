namespace ScNet.Synthesis;

/// <summary>What a synthesised converter is to have least of.</summary>
public enum SynthesisCost
{
    /// <summary>Switches, a stack of devices counting as one.</summary>
    Switches,

    /// <summary>Devices: a switch that stands more than the rating is a stack of as many as share its voltage.</summary>
    Devices,

    /// <summary>
    /// Area of devices at equal on-resistance: in a stack of n each device is n times as wide, so that it takes n² of
    /// a single one's.
    /// </summary>
    Area,
}
