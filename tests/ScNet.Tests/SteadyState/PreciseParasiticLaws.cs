using CsCheck;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Tests.Networks;
using Xunit.Abstractions;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The two-port of random networks with parasitic capacitances against the node equations in 640 binary places: values
/// and plates over twelve decades, each to its own digits.
/// </summary>
public sealed class PreciseParasiticLaws(ITestOutputHelper output)
{
    private const double Tolerance = 1e-10;
    private const int Count = 250;

    // rounding of 640 places
    private const double Nothing = 1e-150;

    [Fact]
    public void Two_ports_agree_with_the_node_equations_in_640_places()
    {
        int compared = 0, drawing = 0;
        var worst = new double[4];
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
                PortOracle.Ports expected = PreciseNodes.Ports(converter, analysis.Mode, hertz);
                PortRatios ratios = prepared.Ratios(1 / hertz);
                double[] off =
                [
                    Math.Abs(ohms - expected.Ohms) / expected.Ohms,
                    Math.Abs(ratios.Voltage - expected.Voltage) / Math.Max(1, Math.Abs(expected.Voltage)),
                    Math.Abs(ratios.Current - expected.Current) / Math.Max(1, Math.Abs(expected.Current)),
                    Math.Abs(expected.Siemens) < Nothing ? ratios.InputSiemens : Math.Abs(ratios.InputSiemens - expected.Siemens) / expected.Siemens,
                ];
                compared++;
                drawing += ratios.InputSiemens > 0 ? 1 : 0;
                worst = [.. worst.Zip(off, Math.Max)];
                Assert.True(off.Max() <= Tolerance, $"At {hertz:R} Hz expected {expected}, but got {ohms:R} Ω and {ratios} ({string.Join(", ", off.Select(o => o.ToString("e1", System.Globalization.CultureInfo.InvariantCulture)))}).");
            },
            Count,
            x => x.ToString());
        output.WriteLine($"{compared} networks had a result, {drawing} of them draw current; the worst were {string.Join(", ", worst.Select(o => o.ToString("e1", System.Globalization.CultureInfo.InvariantCulture)))} off");
        Assert.True(compared >= Count / 5 && drawing >= Count / 20, $"only {compared}, {drawing}");
    }
}
