using Fractions;
using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>Further outputs of converters with inductors, and on sources: limits by hand.</summary>
public sealed class OutputAveragesTests
{
    /// <summary>
    /// A step-down stage with a second coil behind its capacitor. What any output draws comes through the switches and the first
    /// coil at its constant current; the second carries that of the last two alone. Each resistance counts with Σ a_i a_k / D, a = D.
    /// </summary>
    [Fact]
    public void Windings_count_for_every_pair_of_outputs_whose_current_they_carry()
    {
        double high = 0.3, low = 0.7, first = 0.11, second = 0.13;
        OutputMatrices outputs = ModeAnalysis.Of(Converter.Create("two coils").Input("vin").Output("vout", LoadKind.Current).Duties(0.25, 0.75)
            .Switch("high", "vin", "x", on: 1, ohms: high).Switch("low", "x", "gnd", on: 2, ohms: low)
            .Inductor("a", "x", "m", ohms: first).Capacitor("mid", "m", "gnd", esrOhms: 5)
            .Inductor("b", "m", "vout", ohms: second).Capacitor("out", "vout", "gnd", esrOhms: 7)
            .FurtherOutput("early", "m").FurtherOutput("late", "vout").Build()).Outputs;
        double near = (0.25 * high) + (0.75 * low) + first, far = near + second;

        Assert.Equal(["vout: ratio 1/4", "early: ratio 1/4", "late: ratio 1/4"], outputs.Outputs.Select(o => o.ToString()));
        AssertMatrix([far, near, far, near, near, near, far, near, far], outputs.FastSwitchingLimit);
        AssertMatrix(new double[9], outputs.SlowSwitchingLimit);
        AssertMatrix(new double[9], outputs.ChargeSharing);
        Assert.Empty(outputs.Diagnostics);
    }

    /// <summary>
    /// The stiff output is on the input in phase 3, and so at its voltage always; the rail is on one or the other in every phase.
    /// No capacitor's voltage ever changes, whatever either of them draws.
    /// </summary>
    [Fact]
    public void An_output_that_is_on_sources_in_every_phase_has_no_slow_limit()
    {
        OutputMatrices outputs = ModeAnalysis.Of(Converter.Create("bypass").Input("vin").Output("vout").Phases(5)
            .Capacitor("c", "gnd", "n", farads: 0.25)
            .Switch("s0", "n", "vout", on: [1, 3, 4]).Switch("s1", "vin", "n", on: 3)
            .Switch("r1", "rail", "vout", on: [1, 3, 4, 5]).Switch("r2", "rail", "vin", on: 2)
            .FurtherOutput("same", "vout").FurtherOutput("rail", "rail").Build()).Outputs;

        Assert.Equal(["vout: ratio 1", "same: ratio 1", "rail: ratio 1"], outputs.Outputs.Select(o => o.ToString()));
        AssertMatrix(new double[9], outputs.SlowSwitchingLimit);
        AssertMatrix(new double[9], outputs.ChargeSharing);
        Assert.All(outputs.Outputs, o => Assert.Equal("{[0, 0, 0, 0, 0]}", o.ChargeFlow!.Capacitors.ToString()));
    }

    /// <summary>Two coils side by side lead straight from the source to an output: what it draws divides by their windings, 3 to 1.</summary>
    [Theory]
    [InlineData("a", "b")]
    [InlineData("b", "a")]
    public void Coils_from_the_source_share_by_their_windings(string first, string second)
    {
        OutputMatrices outputs = ModeAnalysis.Of(Converter.Create("straight").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("end", "e", "gnd")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Inductor(first, "vin", "e", ohms: first == "a" ? 1 : 3).Inductor(second, "vin", "e", ohms: second == "a" ? 1 : 3)
            .FurtherOutput("far", "e").Build()).Outputs;

        Assert.Equal("1", outputs.Outputs["far"].Ratio.ToString());
        Assert.Equal(0.75, outputs.FastSwitchingLimit["far", "far"]!.Value, 1e-14);
        Assert.Equal(0, outputs.FastSwitchingLimit["far", "vout"]!.Value, 1e-14);
    }

    [Fact]
    public void Duties_of_eighteen_digits_stay_exact()
    {
        Fraction duty = new(123456789012345678, 1_000_000_000_000_000_000);
        OutputMatrices outputs = ModeAnalysis.Of(InductiveStages.StepDown(duty, LoadKind.Current).FurtherOutput("twin", "vout").FurtherOutput("node", "x").Build()).Outputs;

        Assert.All(outputs.Outputs, o => Assert.Equal(Quantity.Exact(duty), o.Ratio));
        Assert.Equal([Quantity.Exact(duty), Quantity.Zero], outputs.Outputs["node"].ChargeFlow!.Switches["high"]);
        Assert.Equal(1, outputs.FastSwitchingLimit["twin", "node"]!.Value, 1e-15);
    }

    private static void AssertMatrix(double[] expected, OutputMatrix<double?> matrix)
    {
        for (int k = 0; k < expected.Length; k++)
        {
            Assert.Equal(expected[k], matrix[k / matrix.Count, k % matrix.Count]!.Value, 1e-14);
        }
    }
}
