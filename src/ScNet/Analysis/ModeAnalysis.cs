namespace ScNet.Analysis;

/// <summary>
/// Everything about one mode of a converter: ideal point, charge flow, both limits and blocking
/// voltages. A mode that has no result has no analysis; <see cref="Try"/> gives the reasons then.
/// </summary>
/// <remarks>
/// The same values are found by element, as in <c>analysis.Capacitors["fly"].Charge[1]</c>, and by report, as
/// in <c>analysis.ChargeFlow.Capacitors["fly"][1]</c>. Charges are per unit of charge delivered to the load in
/// one period, voltages per volt of input. Safe on many threads.
/// </remarks>
public sealed class ModeAnalysis
{
    private readonly ModeResults _results;
    private NamedList<CapacitorAnalysis>? _capacitors;
    private NamedList<SwitchAnalysis>? _switches;
    private NamedList<InductorAnalysis>? _inductors;
    private ChargeSharing? _chargeSharing;
    private OutputMatrices? _outputs;

    internal ModeAnalysis(Converter converter, Mode mode, TopologySolution topology, ModeResults results)
    {
        Converter = converter;
        Mode = mode;
        Topology = topology;
        _results = results;
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>The mode.</summary>
    public Mode Mode { get; }

    /// <summary>The warnings: harmless oddities of the mode.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics => _results.Diagnostics;

    /// <summary>What fixed the last of the capacitor voltages.</summary>
    public VoltageBalance Balance => _results.Voltages.Balance;

    /// <summary>
    /// Whether charge balances at constant inductor currents while the output takes some; always in a converter without
    /// inductors. If not, charges and coefficients are undetermined and both limits infinite.
    /// </summary>
    public bool CarriesLoad => Topology.CarriesLoad;

    /// <summary>The ideal conversion ratio, the same as <see cref="IdealPoint.Ratio"/>.</summary>
    public Quantity Ratio => IdealPoint.Ratio;

    /// <summary>Ratio, capacitor voltages and node potentials without load.</summary>
    public IdealPoint IdealPoint => _results.Voltages.IdealPoint;

    /// <summary>The charge multipliers.</summary>
    public ChargeFlow ChargeFlow => _results.Loaded.ChargeFlow;

    /// <summary>The output impedance at low frequency.</summary>
    public SlowSwitchingLimit SlowSwitchingLimit => _results.Loaded.SlowSwitchingLimit;

    /// <summary>The output impedance at high frequency.</summary>
    public FastSwitchingLimit FastSwitchingLimit => _results.Loaded.FastSwitchingLimit;

    /// <summary>
    /// What is left of the slow limit when held currents carry their share at a steady rate; null in a mode without a
    /// current load or inductors, and where averages can carry no load. Found when first asked for.
    /// </summary>
    public ChargeSharing? ChargeSharing => Converter.Network.HeldCurrentCount == 0 || !CarriesLoad ? null
        : LazyInitializer.EnsureInitialized(ref _chargeSharing, () => SteadyShare.Sharing(Converter, Topology, _results.Loaded.SlowBranches));

    /// <summary>
    /// What all outputs see of the input and of one another: ratios, charges and limits as matrices. Everything else here is of
    /// the main output with the further ones at rest. Found when first asked for.
    /// </summary>
    public OutputMatrices Outputs => LazyInitializer.EnsureInitialized(ref _outputs, () => OutputMatrices.Of(this));

    /// <summary>The voltages that the open switches block.</summary>
    public BlockingVoltages BlockingVoltages => _results.Voltages.BlockingVoltages;

    /// <summary>What is known of each capacitor, by name or by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<CapacitorAnalysis> Capacitors => LazyInitializer.EnsureInitialized(
        ref _capacitors, () => ByElement(Converter.Capacitors.Names, i => new CapacitorAnalysis(this, i)))!;

    /// <summary>What is known of each switch, by name or by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<SwitchAnalysis> Switches => LazyInitializer.EnsureInitialized(
        ref _switches, () => ByElement(Converter.Switches.Names, i => new SwitchAnalysis(this, i)))!;

    /// <summary>What is known of each inductor, by name or by position as in <see cref="Converter.Inductors"/>.</summary>
    public NamedList<InductorAnalysis> Inductors => LazyInitializer.EnsureInitialized(
        ref _inductors, () => ByElement(Converter.Inductors.Names, i => new InductorAnalysis(this, i)))!;

    /// <summary>The capacitors, by position, whose voltage only losses fix.</summary>
    internal IReadOnlyList<int> LeftToLosses => _results.Voltages.LeftToLosses;

    /// <summary>The voltage of each inductor in each phase.</summary>
    internal PhaseTable InductorVoltages => _results.Voltages.InductorVoltages;

    /// <summary>Flow and limits of the main output.</summary>
    internal LoadedResults Loaded => _results.Loaded;

    /// <summary>The topology of the mode, solved once.</summary>
    internal TopologySolution Topology { get; }

    /// <summary>The same as the outcome of the mode.</summary>
    internal ModeOutcome Outcome => new(Converter, Topology, this);

    /// <summary>Analyses the only mode of a converter.</summary>
    /// <param name="converter">The converter.</param>
    /// <exception cref="ArgumentException">The converter has several modes.</exception>
    /// <exception cref="ScNetException">The mode has no result; the exception carries the reasons.</exception>
    public static ModeAnalysis Of(Converter converter)
    {
        ArgumentNullException.ThrowIfNull(converter);
        return Of(converter, converter.OnlyMode(nameof(converter)));
    }

    /// <summary>Analyses one mode.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">One of its modes.</param>
    /// <exception cref="ArgumentException">The mode is not one of the converter's.</exception>
    /// <exception cref="ScNetException">The mode has no result; the exception carries the reasons.</exception>
    public static ModeAnalysis Of(Converter converter, Mode mode) => Try(converter, mode).Require();

    /// <summary>Analyses one mode.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">The name of one of its modes.</param>
    /// <exception cref="ArgumentException">The converter has no mode of this name.</exception>
    /// <exception cref="ScNetException">The mode has no result; the exception carries the reasons.</exception>
    public static ModeAnalysis Of(Converter converter, string mode)
    {
        ArgumentNullException.ThrowIfNull(converter);
        return Of(converter, converter.Modes[mode]);
    }

    /// <summary>Analyses one mode that may have no result.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">One of its modes.</param>
    /// <returns>The analysis, or the reasons why there is none.</returns>
    /// <exception cref="ArgumentException">The mode is not one of the converter's.</exception>
    public static ModeOutcome Try(Converter converter, Mode mode) => ModeSolver.Solve(converter, mode);

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
            ? ModeSolver.Join(converter, Mode, Topology)
            : throw new ArgumentException($"Expected a converter made from '{Converter.Name}' by {nameof(Converter.WithValues)}, but '{converter.Name}' was built by itself.", nameof(converter));
    }

    /// <summary>Converter, mode, ratio and both limits.</summary>
    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"{Converter.Name}, mode {Mode}: ratio {Ratio}, SSL {SlowSwitchingLimit.OhmsAtOneHertz:G6} Ω at 1 Hz, FSL {FastSwitchingLimit.Ohms:G6} Ω");

    private static NamedList<T> ByElement<T>(NameIndex names, Func<int, T> make)
    {
        var items = new T[names.Count];
        for (int i = 0; i < items.Length; i++)
        {
            items[i] = make(i);
        }

        return new NamedList<T>(items, names);
    }
}
