using ScNet.Analysis;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

public sealed class LargeConverterTests
{
    // Twelve flying capacitors, in parallel in one mode and in series in the other: every simple path through
    // the parallel ones is far too many, so that the wide, safe span must come out, and soon.
    [Fact]
    public void Too_many_paths_give_a_wider_span_that_is_said_to_be_so()
    {
        const int count = 12;
        ConverterBuilder builder = Converter.Create("many").Input("vin").Output("vout");
        List<(string, PhaseSet)> series = [("in", 1), ("out", 1)], mesh = [];
        builder.Switch("in", "vin", "p0").Switch("out", $"n{count - 1}", "vout");
        for (int c = 0; c < count; c++)
        {
            builder.Capacitor($"c{c}", $"p{c}", $"n{c}").Switch($"top{c}", $"p{c}", "vout").Switch($"bottom{c}", $"n{c}", "gnd");
            series.AddRange([($"top{c}", 2), ($"bottom{c}", 2)]);
            mesh.AddRange([($"top{c}", 2), ($"bottom{c}", 2)]);
            for (int d = 0; d < count; d++)
            {
                if (d != c)
                {
                    builder.Switch($"m{c}_{d}", $"n{c}", $"p{d}");
                    mesh.Add(($"m{c}_{d}", 1));
                    if (d == c + 1)
                    {
                        series.Add(($"m{c}_{d}", 1));
                    }
                }
            }
        }

        Converter converter = builder.Mode("series", [.. series]).Mode("mesh", [.. mesh]).Build();
        ModeStress stress = ModeStress.Of(ModeAnalysis.Of(converter, converter.Modes[0]), RatedNetworks.OneVolt);
        ChangedPhase change = new(stress, stress.Corners[0], converter.Modes[1], 0);
        VoltageSpan span = change.Across(converter.Switches.PositionOf("m0_1"));
        Assert.False(change.IsExact);
        Assert.Equal(VoltageBasis.Surge, span.Basis);

        // closed, it may take nothing, or at least what is left of the loop of two capacitors: twice 1/13
        Assert.True(span.PerVoltOfInput.Minimum!.Value.ToDouble() <= -2.0 / 13 && span.PerVoltOfInput.Maximum!.Value.ToDouble() >= 0);
    }
}
