namespace ScNet.Results;

/// <summary>One figure of a row.</summary>
/// <param name="Path">The keys that lead to it in JSON, with dots between them: the header of its column in CSV.</param>
/// <param name="Value">A quantity, number, truth value or text; in JSON only, a list, an object or findings.</param>
/// <param name="HasColumn">Whether CSV has it too.</param>
internal sealed record Figure<T>(string Path, Func<T, object?> Value, bool HasColumn = true)
{
    /// <summary>By what rows stand in the order of this figure, where it is not the value itself.</summary>
    public Func<T, object?>? SortValue { get; init; }
}
