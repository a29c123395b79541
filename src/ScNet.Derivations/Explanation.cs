namespace ScNet.Derivations;

/// <summary>What is worked out about a finding when it is asked for.</summary>
internal sealed record Explanation(string? BrokenEquation, Quantity IfOthersAreRight, Conflict? Conflict);
