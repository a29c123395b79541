using CsCheck;
using ScNet.SteadyState;
using ScNet.SteadyState.Exponential;
using ScNet.Tests.Networks;
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
}
