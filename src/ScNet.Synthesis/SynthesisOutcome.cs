namespace ScNet.Synthesis;

/// <summary>What came of a request for the smallest converter.</summary>
public enum SynthesisOutcome
{
    /// <summary>There is a converter, and none costs less.</summary>
    Proved,

    /// <summary>The work was up before the least cost was settled; a bound is known, and perhaps a converter.</summary>
    BoundReached,

    /// <summary>No converter does what was asked.</summary>
    NoneExists,
}
