namespace ScNet.SteadyState.Exponential;

/// <summary>Why a switched linear network has no periodic state.</summary>
internal enum NetworkFault
{
    None,

    /// <summary>A phase leaves an inductor's current without a path.</summary>
    InductorWithoutPath,

    /// <summary>A phase leaves the load's constant current without a path.</summary>
    LoadWithoutPath,

    /// <summary>No steady current can reach the load: capacitors would have to carry it for ever.</summary>
    LoadWithoutSupply,

    /// <summary>An inductor without resistance lies across sources for ever.</summary>
    InductorAcrossSources,

    /// <summary>The map over a period has a state that returns to itself without any drive, such as a lossless resonance in step.</summary>
    Resonance,

    /// <summary>No average current passes between the output and the network.</summary>
    NoOutputCurrent,
}
