namespace ScNet.Analysis;

/// <summary>One of the outputs of a mode, the others drawing no current.</summary>
public sealed class OutputAnalysis
{
    internal OutputAnalysis(string name, Quantity ratio, LoadedResults? loaded)
    {
        Name = name;
        Ratio = ratio;
        Loaded = loaded;
    }

    /// <summary>The name of a further output; the main output goes by the name of its node.</summary>
    public string Name { get; }

    /// <summary>
    /// Whether charge reaches it at constant currents with every capacitor balanced. If not, all else is undetermined, and
    /// a diagnostic of <see cref="OutputMatrices.Diagnostics"/> says why.
    /// </summary>
    public bool IsSupplied => Loaded is not null;

    /// <summary>Its average voltage per volt of input without any load, exact.</summary>
    public Quantity Ratio { get; }

    /// <summary>
    /// The charge multipliers per unit of charge delivered to this output; <see cref="ChargeFlow.Output"/> is the charge of the
    /// main output, which over the period sums to zero for a further one. Null where it is not supplied.
    /// </summary>
    public ChargeFlow? ChargeFlow => Loaded?.ChargeFlow;

    internal LoadedResults? Loaded { get; }

    /// <summary>The name and the ratio.</summary>
    public override string ToString() => $"{Name}: ratio {Ratio}";
}
