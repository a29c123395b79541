using CsCheck;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Tests.Networks;
using Xunit.Abstractions;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>
/// The two-port of random networks with parasitic capacitances against the node equations in 640 binary places: values
/// and plates over twelve decades, each to its own digits.
/// </summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public sealed class PreciseParasiticLaws(ITestOutputHelper output)
{
    private const double Tolerance = 1e-10;
    private const int Count = 250;

    [Fact]
    public void Two_ports_agree_with_the_node_equations_in_640_places()
    {
        int compared = 0, drawing = 0;
        Gen.Select(SpreadConverters.Gen, Gen.Int[0, int.MaxValue - 1]).Holds(
            (sample, seed) =>
            {
                Random random = new(seed);
                double decades = 3 * random.Next(3);
                Converter converter = PlatedNetworks.WithPlates(sample.Converter, random, r => 0.01 * Math.Pow(10, decades * ((2 * r.NextDouble()) - 1)));
                if (ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is not { FastSwitchingLimit.Ohms: > 0 } analysis)
                {
                    return;
                }

                PreparedMode prepared = PreparedMode.Of(converter, analysis.Topology);
                double corner = analysis.SlowSwitchingLimit.OhmsAtOneHertz / analysis.FastSwitchingLimit.Ohms;
                double hertz = sample.FrequencyOverCorner * (corner > 0 ? corner : 1), ohms = prepared.Ohms(1 / hertz);
                PortOracle.Ports expected = PrecisePeriod.Ports(converter, analysis.Mode, hertz);
                PortRatios ratios = prepared.Ratios(1 / hertz);
                string at = $"at {hertz:R} Hz";
                WorstErrors.OfRun.Require("impedance with parasitics", expected.Ohms, ohms, expected.Ohms, Tolerance, at);
                WorstErrors.OfRun.Require("voltage ratio with parasitics", expected.Voltage, ratios.Voltage, Math.Max(1, Math.Abs(expected.Voltage)), Tolerance, at);
                WorstErrors.OfRun.Require("current ratio with parasitics", expected.Current, ratios.Current, Math.Max(1, Math.Abs(expected.Current)), Tolerance, at);
                WorstErrors.OfRun.Require("input conductance with parasitics", expected.Siemens, ratios.InputSiemens, expected.Siemens, Tolerance, at);
                compared++;
                drawing += ratios.InputSiemens > 0 ? 1 : 0;
            },
            Count,
            x => x.ToString(),
            ["9EHIgtZbiabFnXNH"]);
        output.WriteLine($"{compared} networks had a result, {drawing} of them draw current");
        Assert.True(LawCheck.IsOneCase || (compared >= Count / 5 && drawing >= Count / 20), $"only {compared}, {drawing}");
    }
}
