namespace ScNet.Reporting.Html;

/// <summary>The sections with which every report ends.</summary>
internal static class Closing
{
    public static ReportSection Assumptions(IReadOnlyList<string> lines) => new(
        "What these figures take for granted", [new ListPart(lines)]);

    public static ReportSection Origins(IReadOnlyList<Origin> origins) => new(
        "How each figure came about",
        [
            new ProsePart([
                "Lower indices: C a capacitor, s a switch, i, k elements, j a phase; D_j is the duty of a phase, f the switching frequency, T its period, B the matrix of loops. "
                + "\"Derived there\" means that the section named holds the derivation; \"from memory\" that the source was not at hand when it was cited.",
            ]),
            new OriginsPart(origins),
        ]);
}
