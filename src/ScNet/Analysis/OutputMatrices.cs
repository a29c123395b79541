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
        (Mode, Outputs, Diagnostics) = (analysis.Mode, outputs, diagnostics);
        SlowSwitchingLimit = forms.Slow();
        ChargeSharing = forms.Sharing();
        FastSwitchingLimit = forms.Fast();
    }

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

    /// <summary>A warning per output that carries no current in the averages of this mode.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>The outputs with their ratios.</summary>
    public override string ToString() => string.Join("; ", Outputs);

    /// <summary>Finds them.</summary>
    /// <exception cref="ScNetException">The free flow is too dense to be solved with these values.</exception>
    internal static OutputMatrices Of(ModeAnalysis analysis)
    {
        OutputTopology topology = OutputTopology.Of(analysis);
        Converter converter = analysis.Converter;
        LoadedResults?[] loaded;
        try
        {
            loaded = [.. topology.Flows.Select((flow, k) => flow is null ? null : k == 0 ? analysis.Loaded : ValueDecidedFlow.Settle(topology.Converter, flow))];
            NameIndex names = new(converter.Name, "output", [converter.OutputNode, .. converter.FurtherOutputs.Select(o => o.Name)]);
            NamedList<OutputAnalysis> outputs = new([.. loaded.Select((own, k) => new OutputAnalysis(names[k], topology.Ratios[k], own))], names);
            return new OutputMatrices(analysis, outputs, topology.Diagnostics, new OutputForms(topology, loaded, analysis, names));
        }
        catch (Numerics.FillLimitException exception)
        {
            throw new ScNetException($"The outputs of mode '{analysis.Mode.Name}' of '{converter.Name}' have no result:", [ModeSolver.TooDense(exception)]);
        }
    }
}
