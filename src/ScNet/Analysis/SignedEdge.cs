namespace ScNet.Analysis;

/// <summary>An edge as part of a loop or a cut, with its direction.</summary>
/// <param name="Edge">The edge.</param>
/// <param name="Sign">1 where it is taken from its first terminal to its second, -1 where the other way round.</param>
internal readonly record struct SignedEdge(PhaseEdge Edge, int Sign)
{
    /// <summary>The name with its sign: "+fly".</summary>
    public override string ToString() => $"{(Sign < 0 ? '-' : '+')}{Edge?.Name}";
}
