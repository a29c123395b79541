using System.Diagnostics.CodeAnalysis;

namespace ScNet.Analysis;

/// <summary>What came of analysing a mode: its analysis, or the reasons why there is none.</summary>
public sealed class ModeOutcome
{
    internal ModeOutcome(Converter converter, TopologySolution topology, ModeAnalysis? analysis)
    {
        Converter = converter;
        Topology = topology;
        Analysis = analysis;
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>The mode.</summary>
    public Mode Mode => Topology.Mode;

    /// <summary>Every finding: at least one error where there is no result, else the warnings.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics => Analysis?.Diagnostics ?? Topology.Diagnostics;

    /// <summary>Whether the mode has a meaningful result.</summary>
    [MemberNotNullWhen(true, nameof(Analysis))]
    public bool HasResult => Analysis is not null;

    /// <summary>The result, or null where there is none.</summary>
    public ModeAnalysis? Analysis { get; }

    /// <summary>The topology of the mode, solved as far as it goes.</summary>
    internal TopologySolution Topology { get; }

    /// <summary>The result.</summary>
    /// <exception cref="ScNetException">The mode has none; the exception carries the <see cref="Diagnostics"/>.</exception>
    public ModeAnalysis Require() => Analysis
        ?? throw new ScNetException($"Mode '{Mode.Name}' of '{Converter.Name}' has no result:", Diagnostics);

    /// <summary>The analysis in a line, or that there is no result and the first reason.</summary>
    public override string ToString() => Analysis?.ToString() ?? $"{Converter.Name}, mode {Mode}: no result ({Diagnostics[0]})";
}
