using System.Runtime.CompilerServices;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>What the two-port of any switched linear network obeys.</summary>
[Trait("Kind", "Law")]
public sealed class TwoPortLaws
{
    private static readonly double[] s_frequenciesHz = [1e-3, 0.1, 1, 30];

    /// <summary>Reciprocity of a network and its adjoint in reversed time: the current ratio is the ratio of the reversed network.</summary>
    [Fact]
    public void Reversed_phases_exchange_both_ratios_and_keep_impedance_and_conductance() => Check((circuit, f, found) =>
    {
        PeriodFigures? reversed = CircuitTwoPort.TryFind(circuit.Reversed(), f);
        Assert.NotNull(reversed);
        Same(found.Ratios.Voltage, reversed.Value.Ratios.Current);
        Same(found.Ratios.Current, reversed.Value.Ratios.Voltage);
        Same(found.Ohms, reversed.Value.Ohms);
        Same(found.Ratios.InputSiemens, reversed.Value.Ratios.InputSiemens, Seen(found));
    });

    [Fact]
    public void No_power_comes_out_of_the_network() => Check((_, _, found) =>
    {
        // at any V_in and I_out: G V² + (N - M) V I + R I² is not negative
        (double ratio, double currentRatio, double siemens) = (found.Ratios.Voltage, found.Ratios.Current, found.Ratios.InputSiemens);
        double rounding = 1e-9 * (Math.Abs(siemens * found.Ohms) + ((ratio * ratio) + (currentRatio * currentRatio)));
        Assert.True(siemens >= 0, $"{siemens:R} S");
        Assert.True(found.Ohms >= 0, $"{found.Ohms:R} Ω");
        Assert.True((currentRatio - ratio) * (currentRatio - ratio) <= (4 * siemens * found.Ohms) + rounding, $"{found}");
    });

    /// <summary>Plain against doubled precision, with the error of either stated.</summary>
    [Fact]
    public void The_stated_error_is_not_exceeded() => Check((circuit, f, found) =>
    {
        if (CircuitTwoPort.TryFindPlain(circuit, f) is not { } plain || !(plain.RelativeError < 0.1))
        {
            return;
        }

        double allowed = plain.RelativeError + 1e-15;
        Same(found.Ohms, plain.Ohms, allowed: allowed);
        Same(found.Ratios.Voltage, plain.Ratios.Voltage, allowed: allowed);
        Same(found.Ratios.Current, plain.Ratios.Current, allowed: allowed);
        Same(found.Ratios.InputSiemens, plain.Ratios.InputSiemens, Seen(found), allowed);
    });

    [Fact]
    public void Small_steps_of_the_nodal_equations_come_to_the_same() => RandomCircuits.Mild.Holds(
        circuit =>
        {
            foreach (double f in (double[])[0.3, 2])
            {
                if (CircuitTwoPort.TryFind(circuit, f) is { } found && IsSettled(found))
                {
                    (double ratio, double ohms, double currentRatio, double siemens) = SteppedCircuit.Measure(circuit, f, halvings: 10);
                    double allowed = 1e-5;
                    Same(ratio, found.Ratios.Voltage, 1, allowed);
                    Same(ohms, found.Ohms, 1, allowed);
                    Same(currentRatio, found.Ratios.Current, 1, allowed);
                    Same(siemens, found.Ratios.InputSiemens, 1, allowed);
                }
            }
        },
        400,
        c => c.ToString()!,
        ["ak1jBJRZ9zCnqRtr3"]);

    // what returns within some hundred periods, so that the oracle's own error stays small
    private static bool IsSettled(PeriodFigures found) =>
        SlowestDecay.Of([.. found.Inverse], (int)Math.Sqrt(found.Inverse.Length)).Periods < 300 && Math.Abs(found.Ratios.Voltage) < 100;

    private static double Seen(PeriodFigures found) =>
        found.Ohms == 0 ? 0 : Math.Abs(found.Ratios.Voltage * found.Ratios.Current / found.Ohms);

    private static void Same(double expected, double actual, double scale = 0, double allowed = 2e-11) =>
        Assert.True(
            Math.Abs(expected - actual) <= allowed * Math.Max(Math.Max(scale, 1e-9), Math.Abs(expected)), $"Expected {expected:R}, but got {actual:R} ({Math.Abs(actual / expected - 1):e1}).");

    private static void Check(Action<Circuit, double, PeriodFigures> law, [CallerFilePath] string file = "", [CallerMemberName] string name = "")
    {
        int checkedCount = 0;
        RandomCircuits.Any.Holds(
            circuit =>
            {
                foreach (double f in s_frequenciesHz)
                {
                    if (CircuitTwoPort.TryFind(circuit, f) is { } found)
                    {
                        Interlocked.Increment(ref checkedCount);
                        law(circuit, f, found);
                    }
                }
            },
            1000,
            c => c.ToString()!,
            null,
            file,
            name);
        Assert.True(LawCheck.IsOneCase || checkedCount > 500, $"Only {checkedCount} had a result.");
    }
}
