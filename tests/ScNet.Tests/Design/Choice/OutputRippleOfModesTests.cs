using ScNet.Design.Choice;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>Which point of which mode has the largest ripple, of modes whose frequencies are told.</summary>
/// <remarks>
/// A flying capacitor that is small beside the one at the output brings the charge of a cycle, q = I/f, in two equal impulses, half of the running
/// time apart: of the share s that runs the output swings by (1 − s/2) q/C. Of a coil D (1 − D) V/(8 L C f²) swings (the textbook).
/// </remarks>
public sealed class OutputRippleOfModesTests
{
    private const double Farads = 1e-6, Volts = 2;

    private static readonly Converter s_half = SeriesParallel.StepDown(2, farads: 1e-10, ohms: 1e-2);

    private static readonly Converter s_coil = InductiveStage.StepDown(new(1, 4), henries: 1e-5, ohms: 1e-4);

    [Theory]
    [InlineData(1, 0.5)]
    [InlineData(0.5, 0.75)]
    [InlineData(0.125, 0.9375)]
    public void The_share_of_the_cycles_that_runs_counts(double share, double expected)
    {
        OutputRipple ripple = Of([Mode(s_half, (0.01, 1e6, share))], 1, 0.01);
        Assert.Equal(expected * 0.01 / 1e6 / Farads, ripple.Volts, 1e-3 * ripple.Volts);
        Assert.Equal((1, false, 1e6 / share, 0.01), (ripple.Parts, ripple.HasCoils, ripple.RunningHertz, ripple.Point.LoadAmperes));
    }

    // 10 nC in half are less than 9 nC at once; the third is neither the heaviest nor the slowest
    [Fact]
    public void The_slowest_point_counts_beside_the_one_of_the_largest_charge()
    {
        InventedMode mode = Mode(s_half, (0.02, 2e6, 1), (0.9e-3, 1e5, 0.1), (0.025, 5e6, 1));
        OutputRipple ripple = Of([mode], 1, 0.02, 0.9e-3, 0.025);
        Assert.Equal(0.9e-3, ripple.Point.LoadAmperes);
        Assert.Equal(0.95 * 9e-9 / Farads, ripple.Volts, 1e-3 * ripple.Volts);
    }

    [Fact]
    public void The_point_of_the_largest_charge_counts_beside_the_slowest_one()
    {
        OutputRipple ripple = Of([Mode(s_half, (0.02, 2e6, 1), (1e-4, 1e5, 1))], 1, 0.02, 1e-4);
        Assert.Equal(0.02, ripple.Point.LoadAmperes);
        Assert.Equal(0.5 * 1e-8 / Farads, ripple.Volts, 1e-3 * ripple.Volts);
    }

    // between what the heaviest and what the slowest point have with one part: one part holds the first of them alone
    [Fact]
    public void Parts_are_added_until_every_point_is_allowed()
    {
        InventedMode mode = Mode(s_half, (0.02, 2e6, 1), (0.9e-3, 1e5, 0.1));
        OutputRipple one = Of([mode], 1, 0.02, 0.9e-3), several = Of([mode], 0.7 * 9e-9 / Farads, 0.02, 0.9e-3);
        Assert.True(several.Parts > 1, several.ToString());
        Assert.True(several.Volts <= 0.7 * 9e-9 / Farads);
        Assert.Equal(1, Of([mode], one.Volts, 0.02, 0.9e-3).Parts);
    }

    [Fact]
    public void A_coil_stays_one_part_and_its_worst_point_is_told()
    {
        OutputRipple ripple = Of([Mode(s_coil, (0.1, 1e6, 1), (0.01, 2.5e5, 0.5))], 1e-9, 0.1, 0.01);
        double own = 0.1875 * Volts / (8 * 1e-5 * Farads * 5e5 * 5e5);
        Assert.Equal((1, true, 5e5, 0.01), (ripple.Parts, ripple.HasCoils, ripple.RunningHertz, ripple.Point.LoadAmperes));
        Assert.Equal(own + (0.5 * 0.01 / 2.5e5 / Farads), ripple.Volts, 0.02 * ripple.Volts);
    }

    // what is allowed is what the heaviest point has alone: the slowest, which is looked at after it, decides
    [Fact]
    public void A_point_that_is_just_allowed_leaves_the_others_to_be_looked_at()
    {
        InventedMode mode = Mode(s_half, (0.02, 2e6, 1), (0.9e-3, 1e5, 0.1));
        double heaviest = Of([mode], 1, 0.02).Volts;
        Assert.Equal(1, Of([mode], heaviest, 0.02).Parts);
        Assert.True(Of([mode], heaviest, 0.02, 0.9e-3).Parts > 1);
    }

    // half of the time the two phases run, the rest nothing does: the capacitor settles in part in a phase of 0.25 µs with 2 · 0.5 Ω · 0.1 µF
    [Fact]
    public void A_rest_comes_after_cycles_that_do_not_settle()
    {
        OutputRipple ripple = Of([Mode(SeriesParallel.StepDown(2, farads: 1e-7, ohms: 0.5), (0.01, 1e6, 0.5))], 1, 0.01);
        Converter resting = Converter.Create("resting").Input("vin").Output("vout", LoadKind.Current).Duties(0.25, 0.25, 0.5)
            .Capacitor("fly", "p", "n", 1e-7).Capacitor("out", "vout", "gnd", Farads)
            .Switch("s1", "vin", "p", 1, 0.5).Switch("s2", "n", "vout", 1, 0.5).Switch("s3", "p", "vout", 2, 0.5).Switch("s4", "n", "gnd", 2, 0.5).Build();
        double expected = Interleaving.Of(resting, resting.Modes[0], new(Volts, 0.01, 1e6), 1).OutputRippleVolts!.Value;
        Assert.Equal(expected, ripple.Volts, 1e-9 * expected);
    }

    // whichever way it is written, a capacitor from the output to the reference holds the output up while cycles rest: 1 µF and 1 µF more;
    // one to the input takes its part of the ripple alone, 4 µF in all, and those across the input none
    [Fact]
    public void What_stands_across_the_output_holds_it_up()
    {
        Converter coil = Converter.Create("coil").Input("vin").Output("vout").Duties(0.25, 0.75).Inductor("coil", "x", "vout", 1e-5)
            .Capacitor("turned", "gnd", "vout", 1e-6).Capacitor("bridge", "vin", "vout", 2e-6).Capacitor("in", "vin", "gnd", 1e-5).Capacitor("turnedIn", "gnd", "vin", 1e-5)
            .Switch("high", "vin", "x", 1, 1e-4).Switch("low", "x", "gnd", 2, 1e-4).Build();
        OutputRipple ripple = Of([Mode(coil, (0.01, 2.5e5, 0.5))], 1, 0.01);
        double own = 0.1875 * Volts / (8 * 1e-5 * 4 * Farads * 5e5 * 5e5);
        Assert.Equal(own + (0.5 * 0.01 / 2.5e5 / (2 * Farads)), ripple.Volts, 0.02 * ripple.Volts);
    }

    [Fact]
    public void One_coil_among_the_modes_is_enough_for_one_part()
    {
        RegulatedMode[] modes = [Mode(s_half, (0.02, 2e6, 1)), Mode(s_coil, (0.1, 1e6, 1))];
        Assert.Equal(1, Of(modes, 1e-9, 0.02, 0.1).Parts);
    }

    [Fact]
    public void Modes_without_cycles_have_no_ripple() => Assert.Null(OutputRipple.Of(With(1, 0.02), [RegulatedModes.Linear(ScNet.Devices.ControlOverhead.None)]));

    private static OutputRipple Of(RegulatedMode[] modes, double allowedVolts, params double[] loads) => OutputRipple.Of(With(allowedVolts, loads), modes)!;

    private static InventedMode Mode(Converter network, params (double Amperes, double Hertz, double Share)[] points) => new InventedMode(
        network.Name,
        amperes => points.Any(p => p.Amperes == amperes) ? InventedMode.Held(points.First(p => p.Amperes == amperes).Hertz, points.First(p => p.Amperes == amperes).Share, amperes) : InventedMode.Lost,
        network);

    private static Requirement With(double allowedVolts, params double[] loads) => new()
    {
        Name = "ripple",
        InputVolts = new(Volts, Volts),
        OutputVolts = [1],
        Loads = [.. loads.Select((a, i) => new LoadShare($"state {i}", a, 1.0 / loads.Length))],
        Process = CoreRequirement.Process,
        AreaSquareMetres = 1e-6,
        FrequencyHz = new(1e4, 1e8),
        RippleVolts = allowedVolts,
        OutputFarads = Farads,
    };
}
