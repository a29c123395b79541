using Fractions;

namespace ScNet.Stress;

/// <summary>
/// A loop whose voltages do not sum to zero at the instant of a change: the rest is what drives the surge
/// of current, and the closed switches of the loop take it.
/// </summary>
public sealed class LoopSurge
{
    internal LoopSurge(int phase, Fraction surge, double volts, IReadOnlyList<Switch> switches, IReadOnlyList<Capacitor> capacitors)
    {
        Phase = phase;
        PerVoltOfInput = Quantity.Exact(surge);
        Volts = volts;
        Switches = switches;
        Capacitors = capacitors;
    }

    /// <summary>The phase number from 1 of the new mode that the change leads into.</summary>
    public int Phase { get; }

    /// <summary>The magnitude of the sum of the voltages round the loop, per volt of input.</summary>
    public Quantity PerVoltOfInput { get; }

    /// <summary>The same in volts (V) at the highest input voltage of the change.</summary>
    public double Volts { get; }

    /// <summary>
    /// The closed switches that take it, in the converter's order. Where the loop shares none of them with
    /// another surge their voltages sum to it, each in proportion to its resistance (with the series
    /// resistances of <see cref="Capacitors"/>).
    /// </summary>
    public IReadOnlyList<Switch> Switches { get; }

    /// <summary>The capacitors of the loop, in the converter's order; empty where input and output alone conflict.</summary>
    public IReadOnlyList<Capacitor> Capacitors { get; }

    /// <summary>"1/3 in phase 1 round fly1, fly2, taken by s1, s2".</summary>
    public override string ToString() =>
        FormattableString.Invariant($"{PerVoltOfInput} in phase {Phase} round {Names(Capacitors.Select(c => c.Name))}, taken by {Names(Switches.Select(s => s.Name))}");

    private static string Names(IEnumerable<string> names) => names.Any() ? string.Join(", ", names) : "no element";
}
