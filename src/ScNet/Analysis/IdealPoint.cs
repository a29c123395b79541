namespace ScNet.Analysis;

/// <summary>
/// The unloaded steady state of a mode by Kirchhoff's voltage law: every capacitor holds one voltage
/// through the whole period and no charge flows. Voltages are per volt of input.
/// </summary>
/// <remarks>Source: docs/theory/exact-steady-state.md, "The ideal point".</remarks>
public sealed class IdealPoint
{
    internal IdealPoint(Quantity ratio, NamedList<Quantity> capacitorVoltages, PhaseTable nodePotentials)
    {
        Ratio = ratio;
        CapacitorVoltages = capacitorVoltages;
        NodePotentials = nodePotentials;
    }

    /// <summary>
    /// The ideal conversion ratio: output voltage per volt of input. With a current load it is the
    /// average over the period.
    /// </summary>
    public Quantity Ratio { get; }

    /// <summary>
    /// The voltage of each capacitor, positive plate minus bottom plate; by name or by position as in
    /// <see cref="Converter.Capacitors"/>. Undetermined where nothing fixes it.
    /// </summary>
    public NamedList<Quantity> CapacitorVoltages { get; }

    /// <summary>
    /// The potential of each node in each phase against the reference; by name or by position as in
    /// <see cref="Converter.Nodes"/>, then by phase. Undetermined in a phase in which the node floats.
    /// </summary>
    public PhaseTable NodePotentials { get; }

    /// <summary>Ratio and capacitor voltages.</summary>
    public override string ToString() => $"ratio {Ratio}, capacitor voltages [{string.Join(", ", CapacitorVoltages)}]";
}
