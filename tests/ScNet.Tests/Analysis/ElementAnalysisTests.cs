using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>What is found by an element's name is what the reports hold at its position.</summary>
[Trait("Kind", "Law")]
public sealed class ElementAnalysisTests
{
    private static readonly Converter s_half = Converter.Create("Half").Input("vin").Output("vout")
        .Duties(0.25, 0.75).PhaseNames("charge", "discharge")
        .Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
        .Build();

    [Fact]
    public void The_half_converter_is_known_by_the_names_of_its_elements_and_phases()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(s_half);
        CapacitorAnalysis fly = analysis.Capacitors["fly"];
        Assert.Equal(Quantity.Exact(1, 2), fly.Voltage);
        Assert.Equal((Quantity.Exact(1, 2), Quantity.Exact(-1, 2)), (fly.Charge[1], fly.Charge[2]));
        Assert.Equal(fly.Charge[2], fly.Charge["discharge"]);
        Assert.Equal(Quantity.Exact(1, 4), fly.SlowCoefficient);
        Assert.Equal(Quantity.Exact(4, 3), fly.FastCoefficient);
        SwitchAnalysis s4 = analysis.Switches["s4"];
        Assert.Equal(PhaseSet.Of(2), s4.ClosedPhases);
        Assert.Equal((Quantity.Exact(1, 2), Quantity.Zero), (s4.Blocking["charge"], s4.Blocking["discharge"]));
        Assert.Equal(Quantity.Exact(1, 2), s4.PeakBlocking);
        Assert.Equal(Quantity.Exact(-1, 2), s4.Charge[2]);
        Assert.Equal(Quantity.Exact(1, 3), s4.FastCoefficient);
        PhaseValues p = analysis.IdealPoint.NodePotentials["p"];
        Assert.Equal((1, Quantity.Exact(1, 2)), (p[1], p[2]));
        Assert.Equal(("[1/2, 0]", "[1/2, 1/2]"), (analysis.ChargeFlow.Input.ToString(), analysis.ChargeFlow.Output.ToString()));
    }

    [Fact]
    public void A_name_that_does_not_exist_is_answered_with_the_one_that_comes_near()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(s_half);
        Assert.Contains("'fly'", Assert.Throws<ArgumentException>(() => analysis.Capacitors["flj"]).Message, StringComparison.Ordinal);
        Assert.Contains("'Half' has no switch 's9'", Assert.Throws<ArgumentException>(() => analysis.Switches["s9"]).Message, StringComparison.Ordinal);
        Assert.Contains("'charge'", Assert.Throws<ArgumentException>(() => analysis.ChargeFlow.Input["chrage"]).Message, StringComparison.Ordinal);
        Assert.False(analysis.ChargeFlow.Switches.TryGet("fly", out PhaseValues none));
        Assert.Equal(0, none.PhaseCount);
    }

    [Fact]
    public void Every_element_is_found_by_its_name() => LawSample.Check(
        (_, analysis) =>
        {
            Converter converter = analysis.Converter;
            for (int c = 0; c < converter.Capacitors.Count; c++)
            {
                CapacitorAnalysis found = analysis.Capacitors[converter.Capacitors[c].Name];
                Assert.Same(converter.Capacitors[c], found.Capacitor);
                Assert.Equal(analysis.ChargeFlow.Capacitors[c], found.Charge);
                Assert.Equal(analysis.ChargeFlow.Capacitors[found.Capacitor.Name], found.Charge);
                Assert.Equal(analysis.IdealPoint.CapacitorVoltages[c], found.Voltage);
                Assert.Equal(analysis.SlowSwitchingLimit.Coefficients[c], found.SlowCoefficient);
                Assert.Equal(analysis.FastSwitchingLimit.CapacitorCoefficients[c], found.FastCoefficient);
            }

            for (int s = 0; s < converter.Switches.Count; s++)
            {
                SwitchAnalysis found = analysis.Switches[converter.Switches[s].Name];
                Assert.Same(converter.Switches[s], found.Switch);
                Assert.Equal(analysis.Mode.ClosedPhases[s], found.ClosedPhases);
                Assert.Equal(analysis.ChargeFlow.Switches[s], found.Charge);
                Assert.Equal(analysis.BlockingVoltages.Switches[s], found.Blocking);
                Assert.Equal(analysis.BlockingVoltages.Peaks[s], found.PeakBlocking);
                Assert.Equal(analysis.FastSwitchingLimit.SwitchCoefficients[s], found.FastCoefficient);
            }

            for (int n = 0; n < converter.Nodes.Count; n++)
            {
                Assert.Equal(analysis.IdealPoint.NodePotentials[n], analysis.IdealPoint.NodePotentials[converter.Nodes[n]]);
            }
        },
        iterations: 300);

    [Fact]
    public void Asking_again_gives_the_same_lists() =>
        Assert.Same(Once(out ModeAnalysis analysis), analysis.Capacitors);

    private static NamedList<CapacitorAnalysis> Once(out ModeAnalysis analysis) => (analysis = ModeAnalysis.Of(s_half)).Capacitors;

    [Fact]
    public void A_ladder_is_analysed_in_its_twenty_kilobytes()
    {
        Converter converter = Ladders.Of(10);
        ModeAnalysis.Of(converter);
        ModeAnalysis.Of(converter);
        long before = GC.GetAllocatedBytesForCurrentThread();
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.Equal(Quantity.Exact(1, 10), analysis.Ratio);
        Assert.InRange(bytes, 1, 21_000);
    }
}
