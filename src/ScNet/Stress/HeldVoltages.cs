using Fractions;
using ScNet.Analysis;

namespace ScNet.Stress;

/// <summary>What the sources and capacitors of a mode hold, by branch of the network; null where nothing fixes it.</summary>
internal sealed class HeldVoltages
{
    private readonly Fraction?[] _branches;

    private HeldVoltages(Fraction?[] branches) => _branches = branches;

    public Fraction? this[int branch] => _branches[branch];

    public static HeldVoltages Of(ModeAnalysis analysis) => new(
    [
        .. analysis.IdealPoint.CapacitorVoltages.Select(Exact),
        analysis.Converter.Load == LoadKind.Stiff ? Exact(analysis.Ratio) : null,
        Fraction.One,
    ]);

    /// <summary>The same with the voltages of some capacitors given.</summary>
    public HeldVoltages With(IEnumerable<(int Capacitor, Fraction Voltage)> given)
    {
        Fraction?[] branches = [.. _branches];
        foreach ((int capacitor, Fraction voltage) in given)
        {
            branches[capacitor] = voltage;
        }

        return new HeldVoltages(branches);
    }

    private static Fraction? Exact(Quantity value) => value.TryGetFraction(out Fraction fraction) ? fraction : null;
}
