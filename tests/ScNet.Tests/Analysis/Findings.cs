using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>What the tests of findings share.</summary>
internal static class Findings
{
    /// <summary>The findings of the only mode, which has no result.</summary>
    public static IReadOnlyList<Diagnostic> Errors(Converter converter)
    {
        ModeOutcome outcome = ModeAnalysis.Try(converter, converter.Modes[0]);
        Assert.False(outcome.HasResult);
        Assert.All(outcome.Diagnostics, d => Assert.Equal(DiagnosticSeverity.Error, d.Severity));
        return outcome.Diagnostics;
    }

    /// <summary>The only finding of the only mode, which has no result because of it.</summary>
    public static Diagnostic Error(Converter converter) => Assert.Single(Errors(converter));

    /// <summary>The warnings of the only mode, which has a result.</summary>
    public static IReadOnlyList<Diagnostic> Warnings(Converter converter)
    {
        ModeOutcome outcome = ModeAnalysis.Try(converter, converter.Modes[0]);
        Assert.True(outcome.HasResult, string.Join("\n", outcome.Diagnostics));
        Assert.All(outcome.Diagnostics, d => Assert.Equal(DiagnosticSeverity.Warning, d.Severity));
        return outcome.Diagnostics;
    }

    public static void Is(Diagnostic diagnostic, string code, int? phase, string message, params string[] elements)
    {
        Assert.Equal(code, diagnostic.Code);
        Assert.Equal(message, diagnostic.Message);
        Assert.Equal(phase, diagnostic.Phase);
        Assert.Equal(elements, diagnostic.Elements);
    }
}
