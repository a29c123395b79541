namespace ScNet.Reporting.Html;

/// <summary>The sections that every report has: dangers at its head, what figures take for granted and how they came about at its end.</summary>
internal static class Closing
{
    public static ReportSection Dangers() => new("Before use", [new ProsePart(Cautions.Dangers, IsCaution: true)]);

    public static ReportSection Assumptions(IReadOnlyList<string> lines) => new(
        "What these figures take for granted", [new ListPart(lines)]);

    public static ReportSection Origins(IReadOnlyList<Origin> origins) => new(
        "How each figure came about",
        [
            new ProsePart([
                "Lower indices: C a capacitor, s a switch, i and k elements, j a phase. D is the duty of a phase, f the switching frequency, T its period, "
                + "B the matrix of loops, a the charge of an element per unit of charge into the load. "
                + "“Derived there” means that the section named holds the derivation, “from memory” that the source was not at hand when it was cited.",
            ]),
            new OriginsPart(origins),
        ]);
}
