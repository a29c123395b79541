namespace ScNet.Analysis;

/// <summary>
/// Everything about one mode of a converter: ideal point, charge flow, both limits and blocking
/// voltages, or the reasons why there are none.
/// </summary>
public sealed class ModeAnalysis
{
    private readonly ExactMode _exact;
    private readonly ModeResults? _results;

    internal ModeAnalysis(Converter converter, Mode mode, ExactMode exact, ModeResults? results)
    {
        Converter = converter;
        Mode = mode;
        _exact = exact;
        _results = results;
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>The mode.</summary>
    public Mode Mode { get; }

    /// <summary>Whether the mode has a meaningful result. The results throw a <see cref="ScNetException"/> where it has not.</summary>
    public bool HasResult => _results is not null;

    /// <summary>What topology alone says; null where the mode has no result.</summary>
    internal ExactMode Exact => HasResult ? _exact : throw new ScNetException($"Mode '{Mode.Name}' of '{Converter.Name}' has no result:", Diagnostics);

    /// <summary>Every finding: at least one error where there is no result, else the warnings.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics => _exact.Diagnostics;

    /// <summary>The ideal conversion ratio, the same as <see cref="IdealPoint.Ratio"/>.</summary>
    /// <exception cref="ScNetException">The mode has no result.</exception>
    public Quantity Ratio => Results.IdealPoint.Ratio;

    /// <summary>Ratio, capacitor voltages and node potentials without load.</summary>
    /// <exception cref="ScNetException">The mode has no result.</exception>
    public IdealPoint IdealPoint => Results.IdealPoint;

    /// <summary>The charge multipliers.</summary>
    /// <exception cref="ScNetException">The mode has no result.</exception>
    public ChargeFlow ChargeFlow => Results.Loaded.ChargeFlow;

    /// <summary>The output impedance at low frequency.</summary>
    /// <exception cref="ScNetException">The mode has no result.</exception>
    public SlowSwitchingLimit SlowSwitchingLimit => Results.Loaded.SlowSwitchingLimit;

    /// <summary>The output impedance at high frequency.</summary>
    /// <exception cref="ScNetException">The mode has no result.</exception>
    public FastSwitchingLimit FastSwitchingLimit => Results.Loaded.FastSwitchingLimit;

    /// <summary>The voltages that the open switches block.</summary>
    /// <exception cref="ScNetException">The mode has no result.</exception>
    public BlockingVoltages BlockingVoltages => Results.BlockingVoltages;

    private ModeResults Results => _results
        ?? throw new ScNetException($"Mode '{Mode.Name}' of '{Converter.Name}' has no result:", Diagnostics);

    /// <summary>Analyses one mode.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">One of its modes.</param>
    /// <exception cref="ArgumentException">The mode is not one of the converter's.</exception>
    public static ModeAnalysis Of(Converter converter, Mode mode) => ModeSolver.Solve(converter, mode);

    /// <summary>
    /// The same analysis with the component values of another converter of the same topology; what
    /// topology decides is not computed again.
    /// </summary>
    /// <param name="converter">A converter made from this one's by <see cref="Converter.WithValues"/>.</param>
    /// <exception cref="ArgumentException">The converter has another topology.</exception>
    public ModeAnalysis WithValuesOf(Converter converter)
    {
        ArgumentNullException.ThrowIfNull(converter);
        return ReferenceEquals(converter.Network, Converter.Network)
            ? ModeSolver.Join(converter, Mode, _exact)
            : throw new ArgumentException($"Expected a converter made from '{Converter.Name}' by {nameof(Converter.WithValues)}, but '{converter.Name}' was built by itself.", nameof(converter));
    }

    /// <summary>Converter, mode, ratio and both limits, or that there is no result and the first reason.</summary>
    public override string ToString() => HasResult
        ? string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{Converter.Name}, mode {Mode}: ratio {Ratio}, SSL {SlowSwitchingLimit.OhmsAtOneHertz:G6} Ω at 1 Hz, FSL {FastSwitchingLimit.Ohms:G6} Ω")
        : $"{Converter.Name}, mode {Mode}: no result ({Diagnostics[0]})";
}
