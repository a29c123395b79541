namespace ScNet.Kernel;

/// <summary>
/// The edges of a tree between two of its vertices, each once. From the vertex that is deeper at the time the
/// path climbs towards where both ways meet, so climbs from either end may take turns.
/// </summary>
/// <remarks>Cost: constant per edge.</remarks>
internal ref struct TreePath(SpanningForest forest, int from, int to)
{
    private int _from = from;
    private int _to = to;

    /// <summary>The present edge.</summary>
    public int Edge { get; private set; }

    /// <summary>1 where a walk along the path takes the edge from its first end to its second, -1 where the other way round.</summary>
    public int Sign { get; private set; }

    /// <summary>Whether the edge leads away from the start of the path, up; else it leads down to the end, and comes in the opposite order.</summary>
    public bool IsUp { get; private set; }

    /// <summary>Goes to the next edge.</summary>
    /// <returns>Whether there is one.</returns>
    public bool MoveNext()
    {
        if (_from == _to)
        {
            return false;
        }

        IsUp = forest.Depth[_from] >= forest.Depth[_to];
        if (IsUp)
        {
            (Edge, Sign, _from) = (forest.ParentEdge[_from], forest.Sign[_from], forest.Parent[_from]);
        }
        else
        {
            (Edge, Sign, _to) = (forest.ParentEdge[_to], -forest.Sign[_to], forest.Parent[_to]);
        }

        return true;
    }
}
