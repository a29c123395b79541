using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>
/// The independent parts of a mode, prepared, and what follows of them for the whole: conductances to the load add up.
/// </summary>
/// <remarks>Derivation: docs/theory/output-impedance.md, "Independent parts".</remarks>
internal sealed class PreparedMode
{
    private readonly Converter _converter;
    private readonly TopologySolution _topology;
    private readonly SteadyStateSize _size;
    private readonly PreparedPart[] _delivering;
    private readonly Lazy<ImpedanceKernel[]> _kernels;

    private PreparedMode(Converter converter, TopologySolution topology)
    {
        _topology = topology;
        _converter = converter;
        Places = topology.PartsOf(converter);
        Converters = Array.ConvertAll(Places.Parts, p => p.With(converter));
        FullTopology[] full = [.. Places.Parts.Select((p, k) => FullTopology.Of(Converters[k], p.Topology))];
        Converters = [.. full.Select((f, k) => FullConverter.Of(Converters[k], f))];
        _size = SteadyStateSize.Of(converter, topology, full.Zip(Converters, (f, c) => new PartSize(c, f)));
        _size.RequireFlows();
        Duties = [.. converter.Phases.Select(p => p.Duty.ToDouble())];
        Parts = [.. Places.Parts.Select((_, k) => PreparedPart.Of(Converters[k], full[k], Duties, _size))];
        _delivering = [.. Parts.Where((_, k) => Places.Parts[k].Delivers)];
        _kernels = new(Prepare);
    }

    /// <summary>Which element is where.</summary>
    public IndependentParts Places { get; }

    /// <summary>The parts with their component values, parasitic capacitances as capacitors after a part's own.</summary>
    public Converter[] Converters { get; }

    /// <summary>The parts, prepared; at least one.</summary>
    public PreparedPart[] Parts { get; }

    /// <summary>Which potentials the periodic solution has.</summary>
    public KnownPotentials Known => FullTopology.Of(_converter, _topology).Known;

    /// <summary>The duty of each phase.</summary>
    public double[] Duties { get; }

    /// <summary>Prepares a mode of switches and capacitors.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="topology">The topology of the mode.</param>
    /// <exception cref="ScNetException">The network is too large, or has inductors.</exception>
    public static PreparedMode Of(Converter converter, TopologySolution topology) => converter.Inductors.Count == 0
        ? new(converter, topology)
        : throw new ScNetException($"Mode '{topology.Mode.Name}' of '{converter.Name}' has no steady state:", [new Diagnostic(
            DiagnosticSeverity.Error,
            DiagnosticCodes.InductorsUnsupported,
            "This is found from the symmetric decomposition of switches and capacitors, which a converter with inductors does not have. Its impedance, two-port, derivatives and operating point are there: ask SteadyStateModel for them.",
            [.. converter.Inductors.Select(l => l.Name)])]);

    /// <summary>The same mode with other component values.</summary>
    public PreparedMode WithValuesOf(Converter converter) => new(converter, _topology);

    /// <summary>Refuses what every element would need, waveforms or derivatives, if it is too large.</summary>
    /// <exception cref="ScNetException">It is too large.</exception>
    public void RequireElements() => _size.RequireElements(IsChain);

    /// <summary>Prepares the impedance at any frequency.</summary>
    /// <exception cref="ScNetException">It is too large.</exception>
    public PreparedMode WithImpedance()
    {
        _ = _kernels.Value;
        return this;
    }

    /// <summary>The output impedance in ohms for a period in seconds.</summary>
    public double Ohms(double periodSeconds)
    {
        ImpedanceKernel[] kernels = _kernels.Value;
        if (kernels.Length == 1)
        {
            return kernels[0].Ohms(periodSeconds);
        }

        double siemens = 0;
        foreach (ImpedanceKernel kernel in kernels)
        {
            siemens += 1 / kernel.Ohms(periodSeconds);
        }

        return 1 / siemens;
    }

    /// <summary>What input and output see of each other besides the impedance; parts that share a load have the same ratio, and no parasitic capacitance.</summary>
    /// <param name="periodSeconds">The period in seconds.</param>
    public PortRatios Ratios(double periodSeconds) => _kernels.Value[0].Ratios(periodSeconds);

    /// <summary>
    /// Of every part the share of the charge to the load that flows through it; the part's impedance times its share is
    /// the impedance of the whole.
    /// </summary>
    /// <param name="periodSeconds">The period in seconds.</param>
    public double[] Shares(double periodSeconds)
    {
        if (Parts.Length == 1)
        {
            return [1];
        }

        double ohms = Ohms(periodSeconds);
        return [.. Parts.Select((p, k) => Places.Parts[k].Delivers ? ohms / p.Kernel.Ohms(periodSeconds) : 0)];
    }

    /// <summary>The largest product of a rate and half the length of its phase; zero where no current changes.</summary>
    /// <param name="periodSeconds">The period in seconds.</param>
    public double LargestExponent(double periodSeconds) => _kernels.Value.Max(k => k.LargestExponent(periodSeconds));

    private ImpedanceKernel[] Prepare()
    {
        _size.RequireImpedance(IsChain);
        return Array.ConvertAll(_delivering, p => p.Kernel);
    }

    private bool IsChain(int part, int phase) => Parts[part].IsChain(phase);
}
