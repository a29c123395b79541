namespace ScNet.Analysis;

/// <summary>
/// What the outputs of a mode see of the input and of one another in the averages: ratios, charge multipliers, and both limits as
/// matrices of ohms, V_i = ratio_i · V_in − Σ R_ik · I_k. With one output only a single entry of each, that of the mode.
/// </summary>
/// <remarks>
/// The main output comes first; its own entries are those of the mode, in which further outputs draw no current. Derivation:
/// docs/theory/several-outputs.md. Safe on many threads.
/// </remarks>
public sealed class OutputMatrices
{
    private OutputMatrices(ModeAnalysis analysis, NamedList<OutputAnalysis> outputs, IReadOnlyList<Diagnostic> diagnostics, OutputForms forms)
    {
        (Converter, Mode, Outputs, Diagnostics) = (analysis.Converter, analysis.Mode, outputs, diagnostics);
        SlowSwitchingLimit = forms.Slow();
        ChargeSharing = forms.Sharing();
        FastSwitchingLimit = forms.Fast();
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>The mode.</summary>
    public Mode Mode { get; }

    /// <summary>Each output by itself, the main one first; by position or by name.</summary>
    public NamedList<OutputAnalysis> Outputs { get; }

    /// <summary>
    /// The slow-switching limit in ohms (Ω) at a switching frequency of 1 Hz, all charge taken as impulses; proportional to the
    /// period. Symmetric with two phases. Null in rows and columns of outputs without supply.
    /// </summary>
    public OutputMatrix<double?> SlowSwitchingLimit { get; }

    /// <summary>
    /// What the exact impedance times the frequency tends to at low frequency, in ohms (Ω) at 1 Hz: like
    /// <see cref="SlowSwitchingLimit"/>, but with load and inductor currents carrying their share steadily.
    /// </summary>
    public OutputMatrix<double?> ChargeSharing { get; }

    /// <summary>The fast-switching limit in ohms (Ω), symmetric; null in rows and columns of outputs without supply.</summary>
    public OutputMatrix<double?> FastSwitchingLimit { get; }

    /// <summary>A warning per output that carries no current in the averages of this mode; an error where values share charge among too many ways.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>The outputs with their ratios.</summary>
    public override string ToString() => string.Join("; ", Outputs);

    /// <summary>Finds them.</summary>
    internal static OutputMatrices Of(ModeAnalysis analysis)
    {
        OutputTopology topology = OutputTopology.Of(analysis);
        Converter converter = analysis.Converter;
        List<Diagnostic> diagnostics = [.. topology.Diagnostics];
        LoadedResults?[] loaded = [.. topology.Flows.Select((flow, k) => flow is null ? null : k == 0 ? analysis.Loaded : Settle(topology.Converter, flow, diagnostics))];
        NameIndex names = new(converter.Name, "output", [converter.OutputNode, .. converter.FurtherOutputs.Select(o => o.Name)]);
        NamedList<OutputAnalysis> outputs = new([.. loaded.Select((own, k) => new OutputAnalysis(names[k], topology.Ratios[k], own))], names);
        return new OutputMatrices(analysis, outputs, diagnostics.AsReadOnly(), new OutputForms(topology, loaded, analysis, names));
    }

    /// <summary>The flow of an output; null, and one error however many outputs have it, where it is too dense to be solved.</summary>
    internal static LoadedResults? Settle(Converter converter, TopologySolution flow, List<Diagnostic> diagnostics)
    {
        try
        {
            return ValueDecidedFlow.Settle(converter, flow);
        }
        catch (Numerics.FillLimitException exception)
        {
            Diagnostic reason = ModeSolver.TooDense(exception);
            diagnostics.RemoveAll(d => d.Code == reason.Code);
            diagnostics.Add(reason);
            return null;
        }
    }
}
