using Fractions;
using ScNet.Analysis;

namespace ScNet.Design;

/// <summary>
/// How far the bottom plate of each capacitor swings over the phases of a mode: what its parasitic
/// capacitance to the substrate is charged and discharged by in every period.
/// </summary>
/// <remarks>
/// A bottom plate that floats in some phase has no swing here: it is named as undetermined, and the
/// other figures speak of the rest. With a parasitic fraction α the charge α·C·swing is moved once per
/// period: a loss of α·C·(swing·V_in)²·f where that charge is not recovered. Derivation:
/// docs/theory/stress.md, "Equal silicon".
/// </remarks>
public sealed class BottomPlateSwing
{
    private BottomPlateSwing(Quantity[] perVolt, Capacitor[] capacitors)
    {
        PerVoltOfInput = perVolt;
        Undetermined = [.. capacitors.Where((_, c) => !perVolt[c].IsDetermined).Select(c => c.Name)];
        Worst = Quantity.Undetermined;
        foreach (Quantity swing in perVolt.Where(s => s.IsDetermined))
        {
            Worst = !Worst.IsDetermined || QuantityMagnitude.Compare(swing, Worst) > 0 ? swing : Worst;
        }

        WorstCapacitors = [.. capacitors.Where((_, c) => Worst.IsDetermined && perVolt[c] == Worst).Select(c => c.Name)];
        double total = capacitors.Sum(c => c.Farads);
        WeightedSquare = capacitors.Select((c, i) =>
            perVolt[i].IsDetermined ? c.Farads / total * Math.Pow(perVolt[i].ToDouble(), 2) : 0).Sum();
    }

    /// <summary>The highest minus the lowest potential of each bottom plate over the phases, per volt of input; index as in <see cref="Converter.Capacitors"/>.</summary>
    public IReadOnlyList<Quantity> PerVoltOfInput { get; }

    /// <summary>The largest determined swing, per volt of input; undetermined where there is none.</summary>
    public Quantity Worst { get; }

    /// <summary>The names of the capacitors with the largest swing.</summary>
    public IReadOnlyList<string> WorstCapacitors { get; }

    /// <summary>
    /// Σ C·swing² over the determined capacitors, per total capacitance and per square of the input
    /// voltage: no unit. Times α·C_total·V_in²·f it is the power lost to the bottom plates.
    /// </summary>
    public double WeightedSquare { get; }

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
            [.. converter.Capacitors]);
    }

    /// <summary>The largest swing and whose it is.</summary>
    public override string ToString() =>
        $"{Worst} per volt of input{UnitText.Names(" at ", WorstCapacitors)}{UnitText.Names("; ", Undetermined, " undetermined")}";

    private static Quantity SwingOf(PhaseValues potentials)
    {
        if (potentials.Any(p => !p.IsExact))
        {
            return Quantity.Undetermined;
        }

        Fraction[] values = [.. potentials.Select(p => p.ToFraction())];
        return Quantity.Exact(values.Max() - values.Min());
    }
}
