namespace ScNet.Search.Pairs;

/// <summary>Told of the pairs of a walk whose loops fix all voltages.</summary>
internal interface IPairVisitor
{
    /// <summary>Looks at the pair at hand.</summary>
    /// <param name="walk">The walk, with the pair's voltages.</param>
    /// <param name="place">The place of the other phase's space among those of the moving orbit.</param>
    void Visit(PairWalk walk, int place);
}
