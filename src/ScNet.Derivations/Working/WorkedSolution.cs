namespace ScNet.Derivations.Working;

/// <summary>
/// The analysis of one mode as a worked solution for people: the phase networks, the spanning trees,
/// the equations of loops and cuts, what elimination makes of them, and the results. A mode without
/// result is worked up to where it fails.
/// </summary>
/// <remarks>
/// The text is the same on every machine and in every culture, and its lines end with a line feed. It
/// shows the very loops, equations and eliminated rows that <see cref="Analysis.ModeAnalysis"/> uses.
/// Cost: that of the analysis over big integers, and branches times nodes per phase for the cuts.
/// Source of the method: docs/theory/exact-steady-state.md and docs/theory/value-decided-flow.md.
/// </remarks>
public sealed class WorkedSolution
{
    private readonly Block[] _blocks;

    private WorkedSolution(WorkedMode mode)
    {
        Converter = mode.Converter;
        Mode = mode.Mode;
        HasResult = mode.Outcome.HasResult;
        _blocks =
        [
            .. IntroductionChapter.Write(mode),
            .. mode.Converter.Phases.SelectMany(p => PhaseChapter.Write(mode, p.Number - 1)),
            .. VoltageChapter.Write(mode),
            .. ChargeChapter.Write(mode),
            .. DirectionChapter.Write(mode),
            .. LimitChapter.Write(mode),
            .. FindingsChapter.Write(mode),
        ];
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>The mode.</summary>
    public Mode Mode { get; }

    /// <summary>The parts of the document, in their order.</summary>
    internal IReadOnlyList<Block> Blocks => _blocks;

    /// <summary>Whether the mode has a result; if not, the last chapter says where it fails.</summary>
    public bool HasResult { get; }

    /// <summary>Works one mode.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">One of its modes.</param>
    /// <exception cref="ArgumentException">The mode is not one of the converter's.</exception>
    public static WorkedSolution Of(Converter converter, Mode mode)
    {
        ArgumentNullException.ThrowIfNull(converter);
        ArgumentNullException.ThrowIfNull(mode);
        return new(new WorkedMode(converter, mode));
    }

    /// <summary>
    /// The solution as Markdown with pipe tables (GitHub's flavour). Equations are plain text in fenced blocks,
    /// so that they can be read in any editor.
    /// </summary>
    public string ToMarkdown() => MarkdownWriter.Write(_blocks);

    /// <summary>The solution as a LaTeX document of its own; it needs the packages amsmath, fontenc, geometry and longtable.</summary>
    public string ToLatex() => LatexWriter.Write(_blocks);

    /// <summary>Converter and mode.</summary>
    public override string ToString() => $"worked solution of {Converter.Name}, mode {Mode}";
}
