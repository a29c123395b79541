using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>What the tests of findings share.</summary>
internal static class Findings
{
    /// <summary>The findings of the only mode, which has no result.</summary>
    public static IReadOnlyList<Diagnostic> Errors(Converter converter)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        Assert.False(analysis.HasResult);
        Assert.All(analysis.Diagnostics, d => Assert.Equal(DiagnosticSeverity.Error, d.Severity));
        return analysis.Diagnostics;
    }

    /// <summary>The only finding of the only mode, which has no result because of it.</summary>
    public static Diagnostic Error(Converter converter) => Assert.Single(Errors(converter));

    /// <summary>The warnings of the only mode, which has a result.</summary>
    public static IReadOnlyList<Diagnostic> Warnings(Converter converter)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        Assert.True(analysis.HasResult, string.Join("\n", analysis.Diagnostics));
        Assert.All(analysis.Diagnostics, d => Assert.Equal(DiagnosticSeverity.Warning, d.Severity));
        return analysis.Diagnostics;
    }

    public static void Is(Diagnostic diagnostic, string code, int? phase, string message, params string[] elements)
    {
        Assert.Equal(code, diagnostic.Code);
        Assert.Equal(message, diagnostic.Message);
        Assert.Equal(phase, diagnostic.Phase);
        Assert.Equal(elements, diagnostic.Elements);
    }
}
