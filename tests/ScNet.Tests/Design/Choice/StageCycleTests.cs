using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>What a cycle of a sized stage loses and how slow it may be, by hand and against the losses of its elements.</summary>
public sealed class StageCycleTests
{
    private const double Volts = 3.2, Amperes = 0.03, Hertz = 2e6;

    // a share of the cycles runs with all of the current: what is lost in cycles counts with the share, what is lost always in full
    [Theory]
    [InlineData("step-down")]
    [InlineData("ladder")]
    public void A_share_of_the_cycles_loses_its_share_and_what_is_lost_always_in_full(string name)
    {
        SizedConverter sized = Sized(name, 60);
        ModeAnalysis own = Named(name).Duties.AnalysisAt(60).WithValuesOf(sized.Converter);
        LossTerms losses = LossTerms.Of(sized, own);
        Span<double> watts = stackalloc double[LossModel.KindCount];
        Cycle(name, 60).WattsAt(Volts, Amperes, Hertz, 0.25, watts);
        double running = 0;
        foreach (LossKind kind in Enum.GetValues<LossKind>())
        {
            LossTerm[] terms = [.. losses.Terms.Where(t => t.Kind == kind)];
            double always = terms.Sum(t => t.Watts.Constant + (t.Watts.Volts * Volts) + (t.Watts.Volts2 * Volts * Volts));
            double cycles = kind switch
            {
                LossKind.ChargeSharing => (own.ChargeSharing?.OhmsAtOneHertz ?? 0) / Hertz * Amperes * Amperes,
                LossKind.BodyDiodes => losses.Diodes.Sum(d => d.At(Volts, Amperes, Hertz, 2e-9)),
                LossKind.Cores => losses.Cores.Sum(c => c.At(Volts, Hertz)),
                _ => terms.Sum(t => t.Watts.At(Volts, Amperes, Hertz)) - always,
            };
            running += cycles;
            Assert.Equal((0.25 * cycles) + always, watts[(int)kind], 1e-12 * watts[(int)kind]);
        }

        Assert.Equal(1, Cycle(name, 60).RunningWatts(Volts, Amperes, Hertz) / running, 1e-12);
        Assert.True(name != "ladder" || watts[(int)LossKind.ChargeSharing] > 1e-6 * running);
    }

    // every quantity is a straight line from a duty to the next one
    [Theory]
    [InlineData("step-down")]
    [InlineData("ladder")]
    public void A_quarter_of_the_way_to_another_duty_is_three_quarters_of_one_and_a_quarter_of_the_other(string name)
    {
        StageCycle low = Cycle(name, 60), high = Cycle(name, 90), between = low.Towards(high, 0.25);
        Assert.Equal(1, between.RunningWatts(Volts, Amperes, Hertz) / Between(low.RunningWatts(Volts, Amperes, Hertz), high.RunningWatts(Volts, Amperes, Hertz)), 1e-12);
        Assert.Equal(1, between.OhmsAt(Hertz) / Between(low.OhmsAt(Hertz), high.OhmsAt(Hertz)), 1e-12);
        double[] first = WattsOf(low), second = WattsOf(high), own = WattsOf(between);
        Assert.All(own.Select((w, k) => (w, Expected: Between(first[k], second[k]))), w => Assert.Equal(w.Expected, w.w, 1e-12 * w.Expected));
        Assert.Same(low, low.Towards(high, 0));

        static double Between(double a, double b) => (0.75 * a) + (0.25 * b);
        static double[] WattsOf(StageCycle cycle)
        {
            double[] watts = new double[LossModel.KindCount];
            cycle.WattsAt(Volts, Amperes, Hertz, 0.5, watts);
            return watts;
        }
    }

    // one switch of 1/50 Ω or the other, and the winding; the ladder adds what charge sharing has at a frequency
    [Fact]
    public void The_output_impedance_is_that_of_resistance_and_of_charge_sharing()
    {
        Assert.Equal(0.02 + 0.1, Cycle("step-down", 60).OhmsAt(Hertz), 1e-12);
        ModeAnalysis ladder = Named("ladder").Duties.AnalysisAt(60).WithValuesOf(Sized("ladder", 60).Converter);
        Assert.True(ladder.ChargeSharing!.OhmsAtOneHertz > 0);
        Assert.Equal(1, Cycle("ladder", 60).OhmsAt(Hertz) / (ladder.FastSwitchingLimit.Ohms + (ladder.ChargeSharing.OhmsAtOneHertz / Hertz)), 1e-12);
    }

    // at the duty 1/4 each flying capacitor of four levels takes I/4 of a period; 1 µF at two thirds of the input may swing by less than
    // 3 µF at a third: f = I/4 / (1 µF · 2/3 V / 5)
    [Fact]
    public void The_capacitor_that_swings_most_bounds_the_frequency()
    {
        Candidate four = StageCandidates.FlyingCapacitor(4);
        StageCycle cycle = new(LossyStages.Sized(four, LossyStages.Process, 60, new int[8], [1e-6, 3e-6, .. Enumerable.Repeat(50.0, 6)]), four.Duties.AnalysisAt(60));
        Assert.Equal(1, cycle.LeastHertz(3, 0.2) / (0.2 / 4 / (1e-6 * 2 / 3 * 3 / 5)), 1e-12);
        Assert.Equal(0, Cycle("step-down", 60).LeastHertz(3, 0.2));
    }

    // I + V D (1 − D)/(2 f L) is at most 0.5 A, the textbook's ripple: D (1 − D) is 3/16 at 1/4 and 15/64 at 3/8, 51/256 a quarter of the way
    [Fact]
    public void The_largest_current_of_a_coil_bounds_the_frequency()
    {
        Process process = LossyStages.Process with { Inductors = [LossyStages.Coil with { MaximumAmperes = 0.5 }] };
        StageCycle low = Of(60), high = Of(90);
        Assert.Equal(1, low.LeastHertz(3, 0.2) / (3 * 3.0 / 16 / 2e-6 / 0.3), 1e-12);
        Assert.Equal(1, low.Towards(high, 0.25).LeastHertz(3, 0.2) / (3 * 51.0 / 256 / 2e-6 / 0.3), 1e-12);
        Assert.True(double.IsPositiveInfinity(low.LeastHertz(3, 0.5)));
        Assert.True(double.IsPositiveInfinity(low.LeastHertz(3, 0.6)));

        StageCycle Of(int node) => new(LossyStages.Sized(LossyStages.StepDown, process, node, new int[2], [50, 50]), LossyStages.StepDown.Duties.AnalysisAt(node));
    }

    // each coil of a series-capacitor stage carries half of the load; at the duty 1/4 it sees 1/2 − 1/8 of the input for a quarter of the
    // period and falls by as much in three quarters, in steps: half of the rise is 3/64 V/(f L)
    [Theory]
    [InlineData(0.5, 0.4)]
    [InlineData(0.4, 0.5)]
    public void The_weakest_of_several_coils_bounds_the_frequency(double mostOfFirst, double mostOfSecond)
    {
        Candidate stage = StageCandidates.SeriesCapacitor();
        (int capacitors, int switches) = (stage.Converter!.Capacitors.Count, stage.Converter.Switches.Count);
        SizedConverter sized = LossyStages.Sized(
            stage, LossyStages.Process, 120, new int[capacitors + switches], [.. Enumerable.Repeat(1.0, capacitors), .. Enumerable.Repeat(50.0, switches)]);
        SizedConverter coils = new(sized.Converter, sized.Switches, sized.Capacitors, [Coil("a", mostOfFirst), Coil("b", mostOfSecond)], LossyStages.Process);
        Assert.Equal(1, new StageCycle(coils, stage.Duties.AnalysisAt(120)).LeastHertz(3, 0.5) / (3 * 3.0 / 64 / 1e-6 / (0.4 - 0.25)), 1e-12);

        static InductorDevice Coil(string name, double most) => LossyStages.Coil with { Name = name, MaximumAmperes = most };
    }

    private static Candidate Named(string name) => name == "ladder" ? LossyStages.FedLadder : LossyStages.StepDown;

    private static SizedConverter Sized(string name, int node)
    {
        (int capacitors, int switches) = (Named(name).Converter!.Capacitors.Count, Named(name).Converter!.Switches.Count);
        return LossyStages.Sized(
            Named(name), LossyStages.Process, node, new int[capacitors + switches], [.. Enumerable.Repeat(1e-7, capacitors), .. Enumerable.Repeat(50.0, switches)]);
    }

    private static StageCycle Cycle(string name, int node) => new(Sized(name, node), Named(name).Duties.AnalysisAt(node));
}
