namespace ScNet.Fuzzing;

/// <summary>What readers must keep for every text.</summary>
internal static class Property
{
    /// <summary>Requires that something holds.</summary>
    /// <exception cref="BrokenPropertyException">It does not.</exception>
    public static void Holds(bool holds, string expected)
    {
        if (!holds)
        {
            throw new BrokenPropertyException($"Expected {expected}.");
        }
    }

    /// <summary>Requires two texts to be the same.</summary>
    /// <exception cref="BrokenPropertyException">They differ.</exception>
    public static void Same(string expected, string actual, string what)
    {
        if (expected != actual)
        {
            throw new BrokenPropertyException($"Expected {what} to be the same, but they are\n{expected}\nand\n{actual}");
        }
    }

    /// <summary>Requires the findings of a reader about a text: where it is refused an error, and each at a place of the text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="isAccepted">Whether there is a result.</param>
    /// <param name="findings">The findings.</param>
    /// <exception cref="BrokenPropertyException">A finding is missing, or stands outside of the text.</exception>
    public static void Findings(string text, bool isAccepted, IReadOnlyList<Diagnostic> findings)
    {
        bool hasError = findings.Any(d => d.Severity == DiagnosticSeverity.Error);
        Holds(isAccepted != hasError, $"an error where there is no result and none where there is one, but got {string.Join('\n', findings)}");
        if (findings.Count == 0)
        {
            return;
        }

        string[] lines = text.Split('\n');
        foreach (Diagnostic finding in findings)
        {
            Holds(IsPlace(finding, lines), $"a place within {lines.Length} lines, but got {finding}");
            Holds(finding.ToString().AsSpan().IndexOfAny('\n', '\r') < 0, $"a message on one line, but got {finding}");
        }
    }

    // the whole file is meant where it is too large or no text
    private static bool IsPlace(Diagnostic finding, string[] lines) => finding.Position is { } place
        && ((place.Line >= 1 && place.Line <= lines.Length && place.Column >= 1 && place.Column <= lines[place.Line - 1].Length + 1)
            || (place is { Line: 0, Column: 0 } && finding.Code is DiagnosticCodes.FileTooLarge or DiagnosticCodes.FileUnreadable));
}
