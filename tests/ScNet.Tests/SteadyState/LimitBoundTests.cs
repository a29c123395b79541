using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Tests.SteadyState.Precise;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// How far the limits bound the exact impedance (docs/theory/output-impedance.md, "What follows"). The sum of
/// both is no bound where component values decide the charges, since each limit then has a flow of its own.
/// </summary>
[Trait("Kind", "Law")]
public sealed class LimitBoundTests
{
    private static readonly double[] s_timesCorner = [1e-4, 0.02, 0.2, 0.7, 1, 2, 9, 300];

    /// <summary>
    /// Two dividers by two side by side, one of a large capacitor behind large resistances, one of a small
    /// capacitor behind small ones. Each alone is coth(x)/(4 f C) with x = 1/(4 f C R), R being both switches of
    /// a phase; together they are in parallel (by hand). Slowly the large capacitor carries nearly all charge,
    /// fast the small resistances do, and in between neither can.
    /// </summary>
    [Fact]
    public void The_sum_of_both_limits_can_be_fifty_times_too_small()
    {
        double frequencyHz = 1e6;
        Converter converter = Converter.Create("two dividers").Input("vin").Output("vout")
            .Capacitor("large", "p", "n", 1e-6).Capacitor("small", "q", "m", 5e-9)
            .Switch("s1", "vin", "p", on: 1, ohms: 25).Switch("s2", "n", "vout", on: 1, ohms: 25)
            .Switch("s3", "p", "vout", on: 2, ohms: 25).Switch("s4", "n", "gnd", on: 2, ohms: 25)
            .Switch("s5", "vin", "q", on: 1, ohms: 0.125).Switch("s6", "m", "vout", on: 1, ohms: 0.125)
            .Switch("s7", "q", "vout", on: 2, ohms: 0.125).Switch("s8", "m", "gnd", on: 2, ohms: 0.125)
            .Build();
        ImpedancePoint point = OutputImpedance.Of(ModeAnalysis.Of(converter, converter.Modes[0])).At(frequencyHz);
        double Alone(double farads, double ohms) => 1 / (4 * frequencyHz * farads) / Math.Tanh(1 / (4 * frequencyHz * farads * ohms));
        double expected = 1 / ((1 / Alone(1e-6, 50)) + (1 / Alone(5e-9, 0.25)));
        Assert.Equal(expected, point.Ohms, 1e-12 * expected);
        Assert.Equal(1 / (4 * frequencyHz * 1.005e-6), point.SlowOhms, 1e-12);
        Assert.Equal(1 / ((1 / 50.0) + (1 / 0.25)), point.FastOhms, 1e-12);
        Assert.True(point.Ohms > 50 * (point.SlowOhms + point.FastOhms));
    }

    /// <summary>A random network above the sum of its limits; the impedance is that of the node equations in 640 binary places.</summary>
    [Fact]
    public void A_random_network_lies_above_the_sum_of_its_limits()
    {
        ModeAnalysis analysis = LawSample.Analyse(new NetworkSketch(
            7,
            [new Fraction(1, 7), new Fraction(6, 7)],
            [
                new(NetworkSketch.Reference, NetworkSketch.Output, 1, 0.49182212516068236), new(4, NetworkSketch.Output, 2.2243209014780514, 0),
                new(6, 4, 3.8533333333333335, 0), new(NetworkSketch.Input, 4, 3, 0),
            ],
            [new(6, NetworkSketch.Output, 2, 1), new(4, NetworkSketch.Input, 3, 2.06671727007165), new(NetworkSketch.Input, 6, 1, 0.6176470588235294)]));
        ImpedancePoint point = OutputImpedance.Of(analysis).At(0.009453781512605041);
        Assert.Equal(35.64015500998906, point.Ohms, 1e-11);
        Assert.Equal(35.64015500998906, PrecisePeriod.Ports(analysis.Converter, analysis.Mode, point.FrequencyHz).Ohms, 1e-11);
        Assert.Equal(32.94117647058823, point.SlowOhms + point.FastOhms, 1e-11);
    }

    [Fact]
    public void No_impedance_is_below_the_fast_limit()
    {
        LawSample.Check((_, analysis) =>
        {
            OutputImpedance impedance = OutputImpedance.Of(analysis);
            foreach (ImpedancePoint point in Points(analysis, impedance))
            {
                Assert.True(point.Ohms >= point.FastOhms * (1 - 1e-12), $"below at {point.FrequencyHz:R} Hz");
            }
        });
    }

    [Fact]
    public void With_two_phases_or_settled_charges_the_single_pair_of_the_limits_is_a_lower_bound()
    {
        int compared = 0;
        LawSample.Check((_, analysis) =>
        {
            if (!IsLeastDissipation(analysis))
            {
                return;
            }

            compared++;
            foreach (ImpedancePoint point in Points(analysis, OutputImpedance.Of(analysis)))
            {
                Assert.True(point.Ohms >= Math.Max(point.SlowOhms, point.SinglePairOhms) * (1 - 1e-12), $"below at {point.FrequencyHz:R} Hz");
            }
        });
        Assert.True(compared > 200, $"only {compared}");
    }

    [Fact]
    public void With_two_phases_or_settled_charges_both_forms_of_any_one_flow_are_an_upper_bound()
    {
        int compared = 0, decided = 0;
        LawSample.Check((_, analysis) =>
        {
            if (!IsLeastDissipation(analysis))
            {
                return;
            }

            compared++;
            bool isFree = analysis.Topology.Directions.Count > 0;
            double[] slow = isFree ? DirectionAmounts.Slow(analysis.Converter, analysis.Topology) : [];
            double[] fast = isFree ? DirectionAmounts.Fast(analysis.Converter, analysis.Topology) : [];
            decided += isFree ? 1 : 0;
            foreach (double[] amounts in new[] { slow, fast, [.. slow.Zip(fast, (a, b) => (0.7 * a) + (0.3 * b))] })
            {
                (double slowOhmsAtOneHertz, double fastOhms) = Forms(analysis, amounts);
                foreach (ImpedancePoint point in Points(analysis, OutputImpedance.Of(analysis)))
                {
                    double bound = (slowOhmsAtOneHertz / point.FrequencyHz) + fastOhms;
                    Assert.True(point.Ohms <= bound * (1 + 1e-12), $"above at {point.FrequencyHz:R} Hz");
                }
            }
        });
        Assert.True(compared > 200 && decided > 30, $"only {compared} and {decided}");
    }

    private static bool IsLeastDissipation(ModeAnalysis analysis) => analysis.Converter.Load == LoadKind.Stiff
        && (analysis.Converter.Phases.Count == 2 || analysis.Topology.Directions.Count == 0);

    private static IEnumerable<ImpedancePoint> Points(ModeAnalysis analysis, OutputImpedance impedance) =>
        impedance.CornerFrequencyHz == 0 ? [] : s_timesCorner.Select(t => impedance.At(t * impedance.CornerFrequencyHz));

    // What a flow dissipates as impulses at one hertz and as constant currents, per unit of charge into the load.
    private static (double SlowOhmsAtOneHertz, double FastOhms) Forms(ModeAnalysis analysis, double[] amounts)
    {
        Converter converter = analysis.Converter;
        int phases = converter.Phases.Count;
        double Charge(Quantity own, Func<FlowDirection, double> direction) =>
            own.ToDouble() + analysis.Topology.Directions.Select((d, k) => amounts[k] * direction(d)).Sum();
        double slow = 0, fast = 0;
        for (int j = 0; j < phases; j++)
        {
            double duty = converter.Phases[j].Duty.ToDouble();
            for (int c = 0; c < converter.Capacitors.Count; c++)
            {
                int e = (c * phases) + j;
                double charge = Charge(analysis.Topology.Branches[e], d => d.Branches[e]);
                slow += charge * charge / (2 * converter.Capacitors[c].Farads);
                fast += charge * charge * converter.Capacitors[c].EsrOhms / duty;
            }

            for (int s = 0; s < converter.Switches.Count; s++)
            {
                int e = (s * phases) + j;
                double charge = Charge(analysis.Topology.Switches[e], d => d.Switches[e]);
                fast += charge * charge * converter.Switches[s].Ohms / duty;
            }
        }

        return (slow, fast);
    }
}
