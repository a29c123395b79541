namespace ScNet.Derivations;

/// <summary>What the check says about one statement.</summary>
public enum Verdict
{
    /// <summary>The value is the one that the circuit has.</summary>
    Right,

    /// <summary>The circuit has another value, or none although the statement says "?".</summary>
    Wrong,

    /// <summary>Nothing in the circuit fixes the value, or the mode has no result.</summary>
    Undetermined,
}
