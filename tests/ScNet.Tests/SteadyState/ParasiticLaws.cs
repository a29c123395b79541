using System.Runtime.CompilerServices;
using CsCheck;
using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Laws of random networks with parasitic capacitances: stray ones, and plates to any node as body.</summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public sealed class ParasiticLaws
{
    private static readonly double[] s_timesCorner = [0.03, 0.3, 1, 3, 30];

    /// <summary>Matrix exponentials of the nodal equations, which have no tree, no loops and no flows.</summary>
    [Fact]
    public void Input_and_output_see_what_matrix_exponentials_of_the_nodal_equations_say() => Check(350, (analysis, ports) =>
    {
        PortOracle oracle = new(analysis.Converter, analysis.Mode);
        foreach (double hertz in Frequencies(analysis))
        {
            PortOracle.Ports expected = oracle.ByExponential(hertz);
            (double ohms, PortRatios ratios) = ports(hertz);
            string at = $"at {hertz:R} Hz";
            WorstErrors.OfRun.Require("impedance with parasitics", expected.Ohms, ohms, expected.Ohms, 1e-8, at);
            WorstErrors.OfRun.Require("voltage ratio with parasitics", expected.Voltage, ratios.Voltage, 1, 1e-8, at);
            WorstErrors.OfRun.Require("current ratio with parasitics", expected.Current, ratios.Current, 1, 1e-8, at);
            WorstErrors.OfRun.Require("input conductance with parasitics", expected.Siemens, ratios.InputSiemens, expected.Siemens + (1 / expected.Ohms), 1e-8, at);
        }
    });

    /// <summary>Reciprocity of networks of resistors and capacitors whose switches run backwards in time.</summary>
    [Fact]
    public void The_current_ratio_is_the_ratio_of_the_network_with_its_phases_reversed() => Check(450, (analysis, ports) =>
    {
        Converter reversed = PlatedNetworks.Reversed(analysis.Converter);
        PreparedMode prepared = PreparedMode.Of(reversed, ModeAnalysis.Of(reversed, reversed.Modes[0]).Topology);
        foreach (double hertz in Frequencies(analysis))
        {
            (double ohms, PortRatios ratios) = ports(hertz);
            PortRatios other = prepared.Ratios(1 / hertz);
            AssertClose(ratios.Voltage, other.Current, 1);
            AssertClose(ratios.Current, other.Voltage, 1);
            AssertClose(ratios.InputSiemens, other.InputSiemens, ratios.InputSiemens);
            AssertClose(ohms, prepared.Ohms(1 / hertz), ohms);
            if (analysis.Converter.Phases.Count == 2)
            {
                AssertClose(ratios.Voltage, ratios.Current, 1);
            }
        }
    });

    /// <summary>Power into both ports, V_in I_in - V_out I_out, is nowhere negative: R, G and the symmetric part are not.</summary>
    [Fact]
    public void No_frequency_and_no_load_makes_power() => Check(450, (analysis, ports) =>
    {
        double corner = Frequencies(analysis).Last();
        for (int decade = -12; decade <= 12; decade += 2)
        {
            (double ohms, PortRatios ratios) = ports(corner * Math.Pow(10, decade));
            Assert.True(ohms > 0 && ratios.InputSiemens >= 0, $"{ohms} Ω, {ratios}");
            double skew = 0.5 * (ratios.Current - ratios.Voltage);
            Assert.True(skew * skew <= (ohms * ratios.InputSiemens * (1 + 1e-9)) + 1e-20, $"{ohms} Ω, {ratios}");
        }
    });

    [Fact]
    public void Small_plates_change_everything_in_proportion() => Check(300, (analysis, ports) =>
    {
        PreparedMode With(double factor)
        {
            Converter converter = PlatedNetworks.Scaled(analysis.Converter, factor);
            return PreparedMode.Of(converter, ModeAnalysis.Of(converter, converter.Modes[0]).Topology);
        }

        (PreparedMode none, PreparedMode twice, PreparedMode small, PreparedMode smaller) = (With(0), With(2e-7), With(1e-7), With(1e-8));
        foreach (double hertz in Frequencies(analysis))
        {
            double period = 1 / hertz, ohms = none.Ohms(period);
            PortRatios ideal = none.Ratios(period);
            Assert.Equal((analysis.Ratio.ToDouble(), analysis.Ratio.ToDouble(), 0), (ideal.Voltage, ideal.Current, ideal.InputSiemens));
            (PortRatios two, PortRatios one, PortRatios other) = (twice.Ratios(period), small.Ratios(period), smaller.Ratios(period));
            AssertProportional(twice.Ohms(period) - ohms, small.Ohms(period) - ohms, smaller.Ohms(period) - ohms, ohms);
            AssertProportional(two.Voltage - ideal.Voltage, one.Voltage - ideal.Voltage, other.Voltage - ideal.Voltage, 1);
            AssertProportional(two.Current - ideal.Current, one.Current - ideal.Current, other.Current - ideal.Current, 1);
            AssertProportional(two.InputSiemens, one.InputSiemens, other.InputSiemens, 1 / ohms);
        }

        // With f(p) = ap + bp² + cp³, p being 1e-7: f(p) - 10 f(p/10) = 0.9 bp², and f(2p) - 2 f(p) = 2 bp², so that the first
        // less 0.45 of the second leaves the cube. Where a vanishes, as it does where plates swing but stand in nobody's way, the
        // square is all there is. Where plates meet slow parts of the network f can saturate as p/(1 + 1e4 p):
        // line, square and cube are as 1 to 1e-3 to 1e-6, far below the 0.02 that is allowed. Rounding is 1e-12 of the scale.
        static void AssertProportional(double two, double one, double other, double scale)
        {
            Assert.True(Math.Abs(one) <= 1e-2 * scale, $"{one:R} of {scale:R}");
            double line = one - (10 * other), square = two - (2 * one);
            Assert.True(
                Math.Abs(line - (0.45 * square)) <= (0.02 * (Math.Abs(one) + Math.Abs(square))) + (1e-10 * scale), $"{two:R}, {one:R} and {other:R} of {scale:R}");
        }
    }, ["a3eV9okCWBEd3WOm"]);

    [Fact]
    public void Elements_dissipate_what_the_source_gives_and_the_load_does_not_get() => Check(300, (analysis, _) =>
    {
        SteadyStateModel model = SteadyStateModel.Of(analysis);
        foreach (double amperes in new[] { 0, 0.3, -0.2 })
        {
            PeriodicSteadyState steady = model.At(new OperatingPoint(2, amperes, Frequencies(analysis).ElementAt(2)));
            double scale = Math.Max(steady.DissipationWatts, Math.Max(Math.Abs(steady.InputPowerWatts), 1e-6));
            WorstErrors.OfRun.Require("energy balance with parasitics", steady.InputPowerWatts - steady.OutputPowerWatts, steady.DissipationWatts, scale, 1e-10);
            WorstErrors.OfRun.Require("losses of elements with parasitics", steady.DissipationWatts, OperatedConverters.ElementDissipationWatts(steady), scale, 1e-10);
        }
    });

    /// <summary>Each plate's charging by impulses; with a stiff load, and periods that settle, nothing else is lost.</summary>
    [Fact]
    public void Charging_of_all_capacitances_is_the_loss_where_every_phase_settles() => Check(300, (analysis, _) =>
    {
        if (analysis.Converter.Load == LoadKind.Stiff && !analysis.Topology.IsTied)
        {
            PeriodicSteadyState steady = SteadyStateModel.Of(analysis).At(new OperatingPoint(2, 1e-8, 1e-7 * Frequencies(analysis).First()));
            double charging = steady.Capacitors.Sum(c => (c.BottomPlate?.ChargingWatts ?? 0) + (c.TopPlate?.ChargingWatts ?? 0))
                + steady.Parasitics.Sum(p => p.ChargingWatts) + steady.Capacitors.Sum(c => c.ChargingWatts);
            AssertClose(steady.DissipationWatts, charging, steady.DissipationWatts);
        }
    });

    /// <summary>Every derivative of all four figures against central differences of the figures themselves.</summary>
    [Fact]
    public void Slopes_are_those_of_small_differences() => Check(50, (analysis, ports) =>
    {
        Converter converter = analysis.Converter;
        double hertz = Frequencies(analysis).ElementAt(2);
        (double ohms, PortRatios own) = ports(hertz);
        TwoPortSensitivity slopes = SteadyStateModel.Of(analysis).TwoPortSensitivityAt(hertz);
        double[] scales = [1, ohms, 1, own.InputSiemens + (1 / ohms)];
        List<(double Value, TwoPortSlope? Slope)> values = [];
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            Capacitor c = converter.Capacitors[i];
            values.AddRange([(c.Farads, slopes.ByCapacitance[i]), (c.EsrOhms, slopes.ByEsr[i]), (c.Plates.BottomFarads, slopes.ByBottomPlate[i]), (c.Plates.TopFarads, slopes.ByTopPlate[i])]);
        }

        values.AddRange(converter.Parasitics.Select((p, k) => (p.Farads, (TwoPortSlope?)slopes.ByParasitic[k])));
        values.AddRange(converter.Switches.Select((s, k) => (s.Ohms, (TwoPortSlope?)slopes.ByOnResistance[k])));
        for (int k = 0; k < values.Count; k++)
        {
            Assert.Equal(values[k].Value > 0 || k < 4 * converter.Capacitors.Count && k % 4 == 1, values[k].Slope is not null);
            if (values[k].Value > 0)
            {
                AssertSlopes(values[k].Slope!.Value, values[k].Value, h => Figures(PlatedNetworks.Changed(converter, k, 1 + h), hertz), scales);
            }
        }

        AssertSlopes(slopes.ByFrequency, hertz, h => Figures(converter, hertz * (1 + h)), scales);

        // the second phase gives way to the first
        Fraction[] duties = [.. converter.Phases.Select(p => p.Duty)];
        (TwoPortSlope first, TwoPortSlope second) = (slopes.ByDuty[1], slopes.ByDuty[2]);
        AssertSlopes(
            new(first.Ratio - second.Ratio, first.Ohms - second.Ohms, first.CurrentRatio - second.CurrentRatio, first.InputSiemens - second.InputSiemens),
            1,
            h => Figures(PlatedNetworks.WithDuties(converter, [duties[0] + (Fraction)(decimal)h, duties[1] - (Fraction)(decimal)h, .. duties[2..]]), hertz),
            [.. scales.Select(s => 100 * s)]);
    }, ["3tF-EXsDNtt8uIns2"]);

    /// <summary>Values drawn within their tolerances, which the parasitic capacitances do not share.</summary>
    [Fact]
    public void Impedances_within_tolerances_are_within_the_bound() => Check(120, (analysis, _) =>
    {
        double hertz = Frequencies(analysis).ElementAt(2);
        ComponentTolerances tolerances = new(capacitance: 0.2, onResistance: 0.3, esr: 0.1);
        ImpedanceWorstCase worst = ImpedanceTolerance.WorstCase(analysis, hertz, tolerances);
        ImpedanceDistribution drawn = ImpedanceTolerance.MonteCarlo(analysis, hertz, tolerances, sampleCount: 30, seed: 7);
        (Interval<double> found, Interval<double> bound) = (worst.FoundOhms, worst.BoundOhms);
        foreach (double ohms in new[] { drawn.QuantileOhms(0), drawn.QuantileOhms(1), found.Minimum!.Value, found.Maximum!.Value })
        {
            Assert.True(!bound.IsDetermined || (ohms >= bound.Minimum && ohms <= bound.Maximum), $"{ohms:R} is not within {bound}");
        }
    });

    private const double Step = 1e-4;

    private static double[] Figures(Converter converter, double hertz)
    {
        PreparedMode prepared = PreparedMode.Of(converter, ModeAnalysis.Of(converter, converter.Modes[0]).Topology);
        PortRatios ratios = prepared.Ratios(1 / hertz);
        return [ratios.Voltage, prepared.Ohms(1 / hertz), ratios.Current, ratios.InputSiemens];
    }

    // A step of 1e-4 is 2e-3 of a duty of 1/20, and the error of a central difference is in proportion to its square: 4e-6.
    // Twice the step has four times that error, so that a third of their difference takes it off; what is left, the fourth power, is 1e-11.
    private static void AssertSlopes(TwoPortSlope slope, double value, Func<double, double[]> figures, double[] scales)
    {
        double[] analytic = [slope.Ratio, slope.Ohms, slope.CurrentRatio, slope.InputSiemens];
        (double[] above, double[] below, double[] farAbove, double[] farBelow) = (figures(Step), figures(-Step), figures(2 * Step), figures(-2 * Step));
        for (int f = 0; f < analytic.Length; f++)
        {
            double near = (above[f] - below[f]) / (2 * Step), far = (farAbove[f] - farBelow[f]) / (4 * Step), difference = near + ((near - far) / 3);
            WorstErrors.OfRun.Require("slopes with parasitics, by differences", difference, value * analytic[f], scales[f], 1e-7, $"figure {f}");
        }
    }

    private static void AssertClose(double expected, double actual, double scale) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-10 * scale, $"Expected {expected:R}, but got {actual:R} ({Math.Abs(expected - actual) / scale:e1}).");

    private static IEnumerable<double> Frequencies(ModeAnalysis analysis)
    {
        double corner = analysis.SlowSwitchingLimit.OhmsAtOneHertz / analysis.FastSwitchingLimit.Ohms;
        return s_timesCorner.Select(t => t * (corner > 1e-9 ? corner : 1));
    }

    private static void Check(
        long iterations, Action<ModeAnalysis, Func<double, (double Ohms, PortRatios Ratios)>> law, string[]? found = null, [CallerFilePath] string file = "", [CallerMemberName] string name = "")
    {
        int checkedCount = 0;
        PlatedNetworks.Any.Holds(
            converter =>
            {
                if (ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is not { FastSwitchingLimit.Ohms: > 0 } analysis)
                {
                    return;
                }

                Interlocked.Increment(ref checkedCount);
                PreparedMode prepared = PreparedMode.Of(converter, analysis.Topology);
                law(analysis, hertz => (prepared.Ohms(1 / hertz), prepared.Ratios(1 / hertz)));
            },
            iterations,
            Print,
            found,
            file,
            name);
        Assert.True(LawCheck.IsOneCase || checkedCount >= iterations / 10, $"Only {checkedCount} of {iterations} networks had a result.");
    }

    private static string Print(Converter converter) => string.Join(
        Environment.NewLine,
        [
            NetworkSketch.Of(converter).ToString(),
            .. converter.Nodes.Select((n, i) => $"x{i} is {n}"),
            .. converter.Capacitors.Where(c => c.Plates.BottomFarads + c.Plates.TopFarads > 0).Select(c => $"{c.Name}: {c.Plates}"),
            .. converter.Parasitics.Select(p => $"{p} {p.Farads:R} F"),
        ]);
}
