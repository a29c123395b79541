using Fractions;
using ScNet.Analysis;

namespace ScNet.Design;

/// <summary>
/// How far the bottom plate of each capacitor swings over the phases of a mode: what its parasitic
/// capacitance to the substrate is charged and discharged by in every period.
/// </summary>
/// <remarks>
/// A bottom plate that floats in some phase has no swing here: it is named as undetermined, and the
/// other figures speak of the rest. Each step Δ of a plate from one phase to the next, the last one back to
/// the first included, loses ½·C_p·(Δ·V_in)² in a parasitic capacitance C_p that is charged through
/// resistance: a plate that swings twice a period loses twice as much. Capacitors across the sources
/// (<see cref="DecouplingCapacitors"/>) are left out. Derivation: docs/theory/stress.md, "Equal silicon".
/// </remarks>
public sealed class BottomPlateSwing
{
    private BottomPlateSwing(IReadOnlyList<Quantity> perVolt, IReadOnlyList<Quantity> lossWeights, IReadOnlyList<Capacitor> capacitors, IReadOnlySet<Capacitor> leftOut)
    {
        PerVoltOfInput = perVolt;
        LossWeights = lossWeights;
        int[] counted = [.. Enumerable.Range(0, capacitors.Count).Where(c => !leftOut.Contains(capacitors[c]))];
        Undetermined = [.. counted.Where(c => !perVolt[c].IsDetermined).Select(c => capacitors[c].Name)];
        Maximum = counted.Select(c => perVolt[c]).Where(s => s.IsDetermined).DefaultIfEmpty().Max(Comparer<Quantity>.Create(QuantityMagnitude.Compare));
        MaximumCapacitors = [.. counted.Where(c => Maximum.IsDetermined && perVolt[c] == Maximum).Select(c => capacitors[c].Name)];
        double total = counted.Sum(c => capacitors[c].Farads);
        LossWeight = counted.Sum(c => lossWeights[c].IsDetermined ? capacitors[c].Farads / total * lossWeights[c].ToDouble() : 0);
    }

    /// <summary>The largest minus the smallest potential of each bottom plate over the phases, per volt of input; index as in <see cref="Converter.Capacitors"/>.</summary>
    public IReadOnlyList<Quantity> PerVoltOfInput { get; }

    /// <summary>
    /// ½·Σ Δ² of each bottom plate over the steps Δ from phase to phase and from the last back to the first,
    /// per square of the input voltage; index as in <see cref="Converter.Capacitors"/>. The square of the swing for
    /// a plate that goes up and down once.
    /// </summary>
    public IReadOnlyList<Quantity> LossWeights { get; }

    /// <summary>The largest determined swing, per volt of input; undetermined where there is none.</summary>
    public Quantity Maximum { get; }

    /// <summary>The names of the capacitors with the largest swing.</summary>
    public IReadOnlyList<string> MaximumCapacitors { get; }

    /// <summary>
    /// Σ C·weight over the determined capacitors, per total capacitance: no unit. Times α·C_total·V_in²·f it is
    /// the power lost to bottom plates with the fraction α of the capacitance.
    /// </summary>
    public double LossWeight { get; }

    /// <summary>The names of the capacitors whose bottom plate floats in some phase.</summary>
    public IReadOnlyList<string> Undetermined { get; }

    /// <summary>Finds the swings of a mode. The cost is one pass over capacitors and phases.</summary>
    /// <param name="analysis">The mode's analysis.</param>
    public static BottomPlateSwing Of(ModeAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        PhaseTable potentials = analysis.IdealPoint.NodePotentials;
        Converter converter = analysis.Converter;
        return new BottomPlateSwing(
            [.. converter.Capacitors.Select((_, c) => SwingOf(potentials[converter.Network.BranchSecond[c]]))],
            [.. converter.Capacitors.Select((_, c) => LossOf(potentials[converter.Network.BranchSecond[c]]))],
            converter.Capacitors,
            DecouplingCapacitors.Of(converter));
    }

    /// <summary>The largest swing and whose it is.</summary>
    public override string ToString() =>
        $"{Maximum} per volt of input{UnitText.Names(" at ", MaximumCapacitors)}{UnitText.Names("; ", Undetermined, " undetermined")}";

    private static Quantity SwingOf(PhaseValues potentials)
    {
        if (potentials.Any(p => !p.IsExact))
        {
            return Quantity.Undetermined;
        }

        Fraction[] values = [.. potentials.Select(p => p.ToFraction())];
        return Quantity.Exact(values.Max() - values.Min());
    }

    private static Quantity LossOf(PhaseValues potentials)
    {
        if (potentials.Any(p => !p.IsExact))
        {
            return Quantity.Undetermined;
        }

        Fraction sum = Fraction.Zero;
        Fraction before = potentials[potentials.PhaseCount].ToFraction();
        foreach (Quantity potential in potentials)
        {
            Fraction now = potential.ToFraction();
            sum += (now - before) * (now - before);
            before = now;
        }

        return Quantity.Exact(sum / 2);
    }
}
