using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The range that no values within the tolerances leave, by hand from docs/theory/tolerances.md, of a divider whose flying
/// capacitor C passes half of the load's charge in each of two equal phases, through a loop of R.
/// </summary>
public sealed class ImpedanceBoundTests
{
    private const double Farads = 1e-9;
    private const double LoopOhms = 4;

    private static double CornerHz => 1 / (4 * LoopOhms * Farads);

    /// <summary>
    /// From below the impedance itself, coth x/(4 f C), at the best values; from above R + L(X)/(4 f C) at the worst ones,
    /// with X = 1/(4 f R C) of the smallest.
    /// </summary>
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.5)]
    [InlineData(2)]
    [InlineData(200)]
    public void Both_limits_and_one_flow_bound_a_divider(double timesCorner)
    {
        double f = timesCorner * CornerHz;
        Interval<double> bound = ImpedanceBound.Of(Of(OperatedConverters.Half(farads: Farads, ohms: LoopOhms / 2)), f, new(capacitance: 0.2, onResistance: 0.3));
        double least = 1 / (4 * f * 1.2 * Farads), x = 1 / (4 * f * 0.7 * LoopOhms * 0.8 * Farads);
        Near(least / Math.Tanh(least / (0.7 * LoopOhms)), bound.Minimum!.Value);
        Near((1.3 * LoopOhms) + (Langevin(x) / (4 * f * 0.8 * Farads)), bound.Maximum!.Value);
    }

    [Fact]
    public void Series_resistances_have_their_own_tolerance()
    {
        double f = CornerHz;
        ConverterBuilder half = Converter.Create("half").Input("vin").Output("vout").Capacitor("fly", "p", "n", Farads, esrOhms: 1)
            .Switch("s1", "vin", "p", on: 1, ohms: 1).Switch("s2", "n", "vout", on: 1, ohms: 2)
            .Switch("s3", "p", "vout", on: 2, ohms: 1.5).Switch("s4", "n", Converter.ReferenceNode, on: 2, ohms: 1.5);
        Interval<double> bound = ImpedanceBound.Of(Of(half), f, new(capacitance: 0.2, onResistance: 0.3, esr: 0.5));
        double least = 1 / (4 * f * 1.2 * Farads), x = 1 / (4 * f * ((0.7 * 3) + 0.5) * 0.8 * Farads);
        Near(least / Math.Tanh(least / ((0.7 * 3) + 0.5)), bound.Minimum!.Value);
        Near((1.3 * 3) + 1.5 + (Langevin(x) / (4 * f * 0.8 * Farads)), bound.Maximum!.Value);
    }

    /// <summary>
    /// Two capacitors of one time constant side by side behind switches of 3 Ω: charge finds the way of the least r + L(X)/(4 f C), those
    /// of both in parallel, and the fastest mode is the one that circulates between them, of rate 1/(r C).
    /// </summary>
    [Fact]
    public void The_one_flow_takes_the_best_way_through_capacitors_side_by_side()
    {
        double f = CornerHz;
        ConverterBuilder two = Converter.Create("two").Input("vin").Output("vout")
            .Capacitor("fly1", "p", "n", Farads, esrOhms: 2).Capacitor("fly2", "p", "n", 4 * Farads, esrOhms: 0.5)
            .Switch("s1", "vin", "p", on: 1, ohms: 1).Switch("s2", "n", "vout", on: 1, ohms: 2)
            .Switch("s3", "p", "vout", on: 2, ohms: 1.5).Switch("s4", "n", Converter.ReferenceNode, on: 2, ohms: 1.5);
        Interval<double> bound = ImpedanceBound.Of(Of(two), f, new(capacitance: 0.2, onResistance: 0.3, esr: 0.1));
        double share = Langevin(1 / (4 * f * 0.9 * 2 * 0.8 * Farads));
        double first = (1.1 * 2) + (share / (4 * f * 0.8 * Farads)), second = (1.1 * 0.5) + (share / (4 * f * 0.8 * 4 * Farads));
        Near((1.3 * 3) + (1 / ((1 / first) + (1 / second))), bound.Maximum!.Value);

        // both limits at their smallest: 5 C and 3 Ω with both resistances in parallel
        double slow = 1 / (4 * f * 1.2 * 5 * Farads), fast = (0.7 * 3) + (0.9 / (0.5 + 2));
        Near(slow / Math.Tanh(slow / fast), bound.Minimum!.Value);
    }

    /// <summary>
    /// Three phases and charge that values divide: the impedance at the middle of the tolerances by ratio, √(1 − t²) of each value, times a
    /// power. One over the rise from below, unless the fast limit at its smallest is more.
    /// </summary>
    [Theory]
    [InlineData(0.01, true)]
    [InlineData(0.1, true)]
    [InlineData(1000, false)]
    public void With_three_phases_the_derivatives_bound(double timesCorner, bool isByDerivatives)
    {
        const double TC = 0.02, TR = 0.3, TE = 0.1;
        double f = timesCorner * CornerHz, exponent = Math.Atanh(TR) + (((17.0 / 8) + (1 / Math.Sqrt(3))) * Math.Atanh(TC));
        Interval<double> bound = ImpedanceBound.Of(Of(Three(1, 1, 1)), f, new(TC, TR, TE));
        double middle = OutputImpedance.Of(Of(Three(Middle(TC), Middle(TR), Middle(TE)))).Ohms(f);
        double fast = Of(Three(1 + TC, 1 - TR, 1 - TE)).FastSwitchingLimit.Ohms;
        Near(middle * Math.Exp(exponent), bound.Maximum!.Value);
        Near(isByDerivatives ? middle * Math.Exp(-exponent) : fast, bound.Minimum!.Value);
        Assert.Equal(isByDerivatives, middle * Math.Exp(-exponent) > fast);
    }

    [Fact]
    public void The_larger_tolerance_of_resistances_counts()
    {
        double middle = OutputImpedance.Of(Of(Three(1, Middle(0.1), Middle(0.3)))).Ohms(CornerHz / 100);
        Interval<double> bound = ImpedanceBound.Of(Of(Three(1, 1, 1)), CornerHz / 100, new(0, 0.1, 0.3));
        Near(middle * Math.Exp(Math.Atanh(0.3)), bound.Maximum!.Value);
    }

    [Fact]
    public void With_a_current_load_one_flow_bounds_from_above_and_the_fast_limit_from_below()
    {
        double f = CornerHz / 10;
        ModeAnalysis analysis = Of(OperatedConverters.Half(LoadKind.Current, Farads, LoopOhms / 2).Capacitor("out", "vout", Converter.ReferenceNode, 100 * Farads, esrOhms: 0.1));
        Interval<double> bound = ImpedanceBound.Of(analysis, f, new(capacitance: 0.2, onResistance: 0.3));
        Converter best = analysis.Converter.WithValues(
            [.. analysis.Converter.Capacitors.Select(c => 1.2 * c.Farads)], [.. analysis.Converter.Switches.Select(s => 0.7 * s.Ohms)]);
        Near(ModeAnalysis.Of(best, best.Modes[0]).FastSwitchingLimit.Ohms, bound.Minimum!.Value);
        Assert.True(bound.Maximum!.Value > OutputImpedance.Of(analysis).Ohms(f));
    }

    [Fact]
    public void With_a_parasitic_capacitance_the_derivatives_alone_bound_from_below()
    {
        double f = 1000 * CornerHz;
        ModeAnalysis analysis = Of(OperatedConverters.Half(farads: Farads, ohms: LoopOhms / 2).Parasitic("stray", "p", Converter.ReferenceNode, 1e-14));
        Interval<double> bound = ImpedanceBound.Of(analysis, f, new(capacitance: 0.2, onResistance: 0.3));
        Converter middle = analysis.Converter.WithValues([Middle(0.2) * Farads], [.. analysis.Converter.Switches.Select(s => Middle(0.3) * s.Ohms)]);
        double ohms = OutputImpedance.Of(ModeAnalysis.Of(middle, middle.Modes[0])).Ohms(f);
        Near(ohms * Math.Exp(-Math.Atanh(0.3) - (17.0 / 8 * Math.Atanh(0.2))), bound.Minimum!.Value);
    }

    // two flying capacitors side by side, one of which works in two of three phases with the output
    private static ConverterBuilder Three(double capacitance, double onResistance, double esr) => Converter.Create("three").Input("vin").Output("vout").Phases(3)
        .Capacitor("fly1", "p", "n", capacitance * Farads, esr * 0.5).Capacitor("fly2", "p", "n", capacitance * 2 * Farads, esr * 0.1)
        .Switch("s1", "vin", "p", on: 1, onResistance * 2).Switch("s2", "n", "vout", on: 1, onResistance * 2)
        .Switch("s3", "p", "vout", on: 2, onResistance * 2).Switch("s4", "n", Converter.ReferenceNode, on: 2, onResistance * 2);

    private static double Middle(double tolerance) => Math.Sqrt(1 - (tolerance * tolerance));

    // a small one is taken as x/3, its tangent and above it
    private static double Langevin(double x) => x < 0.01 ? x / 3 : (1 / Math.Tanh(x)) - (1 / x);

    private static ModeAnalysis Of(ConverterBuilder builder)
    {
        Converter converter = builder.Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }

    // rounding of 1e-11 is allowed for
    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 3e-11 * expected);
}
