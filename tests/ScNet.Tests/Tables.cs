namespace ScNet.Tests;

/// <summary>Values over elements and phases that are called by their number.</summary>
internal static class Tables
{
    public static PhaseTable Of(Quantity[] values, int elements, int phases) => new(values, Names("element", elements), Names("phase", phases));

    public static PhaseValues Row(params Quantity[] values) => new(values, 0, Names("phase", values.Length));

    public static NamedList<Quantity> List(params Quantity[] values) => new(values, Names("element", values.Length));

    public static NameIndex Names(string kind, int count) =>
        new("test", kind, [.. Enumerable.Range(1, count).Select(k => FormattableString.Invariant($"{k}"))]);
}
