using CsCheck;
using ScNet.SteadyState.Exponential;
using ScNet.Tests.Networks;
using ScNet.Tests.Numerics;
using Xunit.Abstractions;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>
/// Random networks with inductors, of values over twelve decades and up to twelve phases, against the node equations in 640
/// binary places.
/// </summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public sealed class PreciseHybridLaws(ITestOutputHelper output)
{
    private const double Tolerance = 1e-10;
    private const int Count = 25;

    [Fact]
    public void Two_ports_with_inductors_agree_with_the_node_equations_in_640_places()
    {
        int compared = 0, refused = 0;
        SpreadHybrids.Gen.Holds(
            sample =>
            {
                if (HybridSolution.TryFind(OutputNetworks.With(sample.Converter), sample.FrequencyHz) is not { } solution)
                {
                    refused++;
                    return;
                }

                compared++;
                Assert.Equal(NetworkFault.None, solution.Solver.Solve(sample.FrequencyHz, out PeriodFigures found));
                PortOracle.Ports expected = PrecisePorts.Of(solution.Period).Ports;
                double siemens = Math.Max(Math.Abs(expected.Siemens), expected.Ohms == 0 ? 0 : Math.Abs(expected.Voltage * expected.Current / expected.Ohms));
                string at = $"(stated {found.RelativeError:e1})";
                WorstErrors.OfRun.Require("impedance with inductors", expected.Ohms, found.Ohms, expected.Ohms, Tolerance, at);
                WorstErrors.OfRun.Require("voltage ratio with inductors", expected.Voltage, found.Ratios.Voltage, Math.Max(1, Math.Abs(expected.Voltage)), Tolerance, at);
                WorstErrors.OfRun.Require("current ratio with inductors", expected.Current, found.Ratios.Current, Math.Max(1, Math.Abs(expected.Current)), Tolerance, at);
                WorstErrors.OfRun.Require("input conductance with inductors", expected.Siemens, found.Ratios.InputSiemens, siemens, Tolerance, at);
            },
            Count,
            sample => sample.ToString());
        output.WriteLine($"{compared} networks had a result, {refused} had none");
        Assert.True(LawCheck.IsOneCase || compared >= Count / 5, $"only {compared}");
    }

    [Fact]
    public void Several_outputs_with_inductors_agree_with_the_node_equations_in_640_places()
    {
        int compared = 0;
        SpreadHybrids.Gen.Holds(
            sample =>
            {
                Converter converter = sample.Converter;
                if (converter.FurtherOutputs.Count == 0 || HybridSolution.TryFind(OutputNetworks.With(converter), sample.FrequencyHz) is null)
                {
                    return;
                }

                compared++;
                ExponentialMultiPort ports = ExponentialMultiPort.Of(converter, converter.Modes[0]);
                Converter supplied = OutputNetworks.With(converter, [.. ports.Supplied.Select(k => converter.FurtherOutputs[k]).Select(o => (o.Name, o.Node, o.ReturnNode))]);
                PreciseNetwork network = PreciseNetwork.Of(supplied, supplied.Modes[0]);
                PrecisePeriod period = PrecisePeriod.Of(network, sample.FrequencyHz);
                Assert.True(network.HasPaths && period.HasState, "An output was found that has no path or no supply.");
                BigMatrix shown = period.ByCurrents();
                MultiPortValues found = ports.At(sample.FrequencyHz);

                // of an output that lies at a source, or across a coil without resistance, nothing is left but rounding
                double least = Math.Max(1e-15 * converter.Switches.Min(s => s.Ohms), 1e-20 * converter.Switches.Max(s => s.Ohms));
                double[] own = [.. found.Ratios.Select((_, i) => Math.Max(least, Math.Abs(Shown(i + 1, i + 1))))];
                double ratio = Math.Max(1, found.Ratios.Select((_, i) => Math.Max(Math.Abs(Shown(i + 1, 0)), Math.Abs(Shown(0, i + 1)))).Max());
                for (int i = 0; i < own.Length; i++)
                {
                    WorstErrors.OfRun.Require("ratios of several outputs with inductors", Shown(i + 1, 0), found.Ratios[i], ratio, Tolerance);
                    WorstErrors.OfRun.Require("current ratios of several outputs with inductors", Shown(0, i + 1), found.CurrentRatios[i], ratio, Tolerance);
                    for (int k = 0; k < own.Length; k++)
                    {
                        WorstErrors.OfRun.Require(
                            "impedances of several outputs with inductors", -Shown(i + 1, k + 1), found.Ohms[(i * own.Length) + k], Math.Sqrt(own[i] * own[k]), Tolerance, $"{i}, {k}");
                    }
                }

                double Shown(int row, int column) => PrecisePorts.Nearest(shown[row, column]);
            },
            2 * Count,
            sample => sample.ToString(),
            ["a20UHe8xyiugeie-"]);
        Assert.True(LawCheck.IsOneCase || compared >= Count / 5, $"only {compared}");
    }

    [Fact]
    public void A_winding_that_is_off_by_a_billionth_is_told_apart()
    {
        Converter stage = InductiveStages.StepDown(new Fractions.Fraction(1, 3)).Build().WithValues(windingOhms: [0.5]);
        double expected = PrecisePeriod.Ports(stage, stage.Modes[0], 3).Ohms;

        // a coil between stiff ports, 1 Ω of whichever switch is closed and its winding: nothing but resistances on average
        Assert.Equal(1.5, expected, 1e-15);
        Converter other = stage.WithValues(windingOhms: [0.5 * (1 + 1e-8)]);
        Assert.NotInRange(PrecisePeriod.Ports(other, other.Modes[0], 3).Ohms, expected * (1 - Tolerance), expected * (1 + Tolerance));
    }
}
