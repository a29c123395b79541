namespace ScNet.Stress;

/// <summary>What an order of modes keeps small.</summary>
public enum ModeOrderCriterion
{
    /// <summary>The largest voltage across any switch, open or closed, at any change.</summary>
    StressAndSurge,

    /// <summary>The largest voltage that an open switch blocks at any change.</summary>
    Stress,

    /// <summary>The largest voltage that a closed switch takes at any change.</summary>
    Surge,
}
