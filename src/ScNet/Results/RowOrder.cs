namespace ScNet.Results;

/// <summary>Rows in the order of one of their values.</summary>
internal static class RowOrder
{
    /// <summary>The positions of values in their order: numbers by size before texts by the code of their letters, what has no value last, equal ones as they were.</summary>
    public static IReadOnlyList<int> Of(IReadOnlyList<object?> values, bool isDescending)
    {
        (int Index, double? Number, string? Text)[] keys = [.. values.Select((v, i) => (i, NumberOf(v), v as string))];
        IOrderedEnumerable<(int Index, double? Number, string? Text)> valued = keys.OrderBy(k => k.Number is null && k.Text is null).ThenBy(k => k.Number is null);
        return [.. (isDescending
            ? valued.ThenByDescending(k => k.Number).ThenByDescending(k => k.Text, StringComparer.Ordinal)
            : valued.ThenBy(k => k.Number).ThenBy(k => k.Text, StringComparer.Ordinal)).Select(k => k.Index)];
    }

    private static double? NumberOf(object? value) => value switch
    {
        Quantity { IsDetermined: true } quantity => quantity.ToDouble(),
        double number when !double.IsNaN(number) => number,
        int count => count,
        long count => count,
        bool flag => flag ? 1 : 0,
        _ => null,
    };
}
