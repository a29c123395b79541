namespace ScNet.Analysis;

/// <summary>
/// One value per pair of outputs, rows first: what the voltage of the row's output has to do with the current of the column's.
/// Outputs by position, the main one 0 and the further ones after it in the converter's order, or by name, the main one by
/// that of its node.
/// </summary>
/// <typeparam name="T">What a value is.</typeparam>
[ShownAsText("The few outputs of a converter fit in brackets.")]
public sealed class OutputMatrix<T>
{
    private readonly T[] _values;
    private readonly NameIndex _outputs;

    // values[row · outputs + column]
    internal OutputMatrix(T[] values, NameIndex outputs)
    {
        _values = values;
        _outputs = outputs;
    }

    /// <summary>The number of outputs.</summary>
    public int Count => _outputs.Count;

    /// <summary>The value of a pair of outputs.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such position.</exception>
    public T this[int row, int column] => _values[(Checked(row, nameof(row)) * Count) + Checked(column, nameof(column))];

    /// <summary>The value of a pair of outputs.</summary>
    /// <exception cref="ArgumentException">There is no such name; the message says which one comes near.</exception>
    public T this[string row, string column] =>
        _values[(_outputs.Require(row, nameof(row)) * Count) + _outputs.Require(column, nameof(column))];

    /// <summary>The rows in brackets: "[[1, 2], [3, 4]]".</summary>
    public override string ToString() =>
        $"[{string.Join(", ", Enumerable.Range(0, Count).Select(r => $"[{string.Join(", ", Enumerable.Range(0, Count).Select(c => Text(this[r, c])))}]"))}]";

    private static string Text(T value) => value switch
    {
        null => "?",
        double number => number.ToString("G6", System.Globalization.CultureInfo.InvariantCulture),
        _ => value.ToString()!,
    };

    private int Checked(int position, string parameterName) => (uint)position < (uint)Count
        ? position
        : throw new ArgumentOutOfRangeException(parameterName, position, $"Expected a position from 0 to {Count - 1}.");
}
