using ScNet.Design.Choice;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;

namespace ScNet.Tests.Design.Choice;

/// <summary>The ripple of coils that leave cycles out, and of those that nothing holds up.</summary>
public sealed class OutputRippleOfStagesTests
{
    private const double Farads = 1e-6, Volts = 2;

    // half of the cycles run, with twice the load, which takes a fifth of the input at the high switch of 10 Ω, but nothing at the low one
    [Fact]
    public void Cycles_that_run_carry_the_load_of_those_that_are_left_out()
    {
        const double Amperes = 0.02, Hertz = 2.5e5, Share = 0.5;
        OutputRipple ripple = Of(Mode((Amperes, Hertz, Share)), Farads, Amperes);
        Converter held = Stage(LoadKind.Current).Capacitor("out", "vout", "gnd", Farads).Build();
        double own = Interleaving.Of(held, held.Modes[0], new(Volts, Amperes / Share, Hertz / Share), 1).OutputRippleVolts!.Value;
        double rest = (1 - Share) * Amperes / Hertz / Farads;
        Assert.Equal(own + rest, ripple.Volts, 1e-9 * ripple.Volts);
        Assert.True(own > 0.01 * rest);
    }

    // of two points without a bound the one that moves the larger charge in a cycle, 100 nC against 40 nC
    [Fact]
    public void Where_nothing_holds_the_output_up_the_point_of_the_largest_charge_is_told()
    {
        OutputRipple ripple = Of(Mode((0.01, 2.5e5, 0.5), (0.1, 1e6, 1)), 0, 0.01, 0.1);
        Assert.Equal(double.PositiveInfinity, ripple.Volts);
        Assert.Equal((0.1, 1e6), (ripple.Point.LoadAmperes, ripple.RunningHertz));
    }

    private static OutputRipple Of(RegulatedMode mode, double farads, params double[] loads)
    {
        Requirement requirement = new()
        {
            Name = "ripple",
            InputVolts = new(Volts, Volts),
            OutputVolts = [0.5],
            Loads = [.. loads.Select((a, i) => new LoadShare($"state {i}", a, 1.0 / loads.Length))],
            Process = CoreRequirement.Process,
            AreaSquareMetres = 1e-6,
            FrequencyHz = new(1e4, 1e8),
            RippleVolts = 1,
            OutputFarads = farads,
        };
        return OutputRipple.Of(requirement, [mode])!;
    }

    private static InventedMode Mode(params (double Amperes, double Hertz, double Share)[] points) => new(
        "stage", amperes => Held(points.First(p => p.Amperes == amperes)), Stage(LoadKind.Stiff).Build());

    private static RegulatedPoint Held((double Amperes, double Hertz, double Share) point) => InventedMode.Held(point.Hertz, point.Share, point.Amperes);

    private static ConverterBuilder Stage(LoadKind load) => Converter.Create("stage").Input("vin").Output("vout", load).Duties(0.25, 0.75)
        .Inductor("coil", "x", "vout", henries: 1e-5).Switch("high", "vin", "x", 1, 10).Switch("low", "x", "gnd", 2, 1e-4);
}
