using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Stages with flying capacitors, and what the tests read of them.</summary>
internal static class Hybrids
{
    public static Circuit HalfWithPlate() => new Circuit(LoadKind.Stiff, 0.5, 0.5).Capacitor("p", "n", 1e-9).Capacitor("n", Converter.ReferenceNode, 3e-11)
        .Switch("vin", "p", 2, 1).Switch("n", "vout", 2, 1).Switch("p", "vout", 2, 2).Switch("n", Converter.ReferenceNode, 2, 2);

    /// <summary>One flying capacitor behind an inductor, the two outer switches half a period apart, each closed for the duty.</summary>
    public static Circuit ThreeLevel(double duty, double farads) => MultiLevel(3, duty, farads, 0.01);

    /// <summary>Two flying capacitors, three pairs of switches a third of a period apart.</summary>
    public static Circuit FourLevel(double duty, double farads, double ohms) => MultiLevel(4, duty, farads, ohms);

    /// <summary>The average voltage of a capacitor per volt of input without load.</summary>
    public static double OpenVoltage(Circuit circuit, PeriodFigures found, int capacitor)
    {
        StateEquations<DoubleDouble> equations = StateEquations<DoubleDouble>.Of(circuit.Structure(), circuit.Values());
        DoubleDouble[] row = equations.CapacitorVoltage(capacitor);
        double sum = row[^2].Nearest + (circuit.Load == LoadKind.Stiff ? row[^1].Nearest * found.Ratios.Voltage : 0);
        return sum + found.OpenState.Select((x, k) => x * row[k].Nearest).Sum();
    }

    // pair k of n - 1 conducts high from k/(n - 1) for the duty; phases are the intervals between all instants of switching
    private static Circuit MultiLevel(int levels, double duty, double farads, double ohms)
    {
        int pairs = levels - 1;
        double[] starts = [.. Enumerable.Range(0, pairs).Select(k => (double)k / pairs)];
        double[] instants = [.. starts.Concat(starts.Select(s => (s + duty) % 1)).Append(1).Select(t => Math.Round(t, 12)).Distinct().Order()];
        double[] duties = [.. instants.Zip(instants.Skip(1), (a, b) => b - a)];
        Circuit circuit = new Circuit(LoadKind.Stiff, duties).Inductor("x", "vout", 1e-6, 2 * ohms);
        for (int k = 0; k < pairs; k++)
        {
            int[] high = [.. Enumerable.Range(1, duties.Length).Where(j => (((instants[j - 1] + (duties[j - 1] / 2)) - starts[k] + 1) % 1) < duty)];
            int[] low = [.. Enumerable.Range(1, duties.Length).Except(high)];
            circuit.Switch(k == 0 ? "vin" : $"h{k}", k == pairs - 1 ? "x" : $"h{k + 1}", ohms, high);
            circuit.Switch(k == 0 ? Converter.ReferenceNode : $"l{k}", k == pairs - 1 ? "x" : $"l{k + 1}", ohms, low);
        }

        for (int k = 1; k < pairs; k++)
        {
            circuit.Capacitor($"h{k}", $"l{k}", farads);
        }

        return circuit;
    }
}
