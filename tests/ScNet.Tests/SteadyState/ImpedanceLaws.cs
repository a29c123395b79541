using System.Runtime.CompilerServices;
using CsCheck;
using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>What the exact impedance obeys on any network; what the limits say of it is in <see cref="LimitBoundTests"/>.</summary>
[Trait("Kind", "Law")]
public sealed class ImpedanceLaws
{
    private static readonly double[] s_timesCorner = [1e-4, 0.02, 0.2, 0.7, 1, 2, 9, 300];

    [Fact]
    public void Both_limits_are_approached() => Check((_, analysis, impedance) =>
    {
        double corner = impedance.CornerFrequencyHz;
        if (analysis.Converter.Load == LoadKind.Stiff)
        {
            // an exponentially small distance at the low end, a quadratically small one at the high end
            double low = 1e-6 * Math.Min(corner, 1e-3), slow = analysis.SlowSwitchingLimit.Ohms(low);
            Assert.True(Off(slow, impedance.Ohms(low)) < 1e-8, $"slow: expected {slow:R}, but got {impedance.Ohms(low):R}");
        }

        double high = 1e6 * Math.Max(corner, 1), fast = analysis.FastSwitchingLimit.Ohms;
        Assert.True(Off(fast, impedance.Ohms(high)) < 1e-8, $"fast: expected {fast:R}, but got {impedance.Ohms(high):R}");
    });

    [Fact]
    public void Impedances_are_positive_and_change_no_faster_than_the_frequency() => Check((_, analysis, impedance) =>
    {
        // with a stiff load and two phases R(f) falls with f and f·R(f) rises: both limits of the dissipation are monotone
        bool isMonotone = analysis.Converter.Load == LoadKind.Stiff && analysis.Converter.Phases.Count == 2;
        double before = double.PositiveInfinity, timesBefore = 0;
        foreach (double f in s_timesCorner.Select(t => t * impedance.CornerFrequencyHz))
        {
            double ohms = impedance.Ohms(f);
            Assert.True(ohms > 0 && double.IsFinite(ohms), $"{ohms}");
            Assert.True(!isMonotone || (ohms <= before * (1 + 1e-12) && ohms * f >= timesBefore * (1 - 1e-12)), $"at {f:R} Hz");
            (before, timesBefore) = (ohms, ohms * f);
        }
    });

    [Fact]
    public void Larger_capacitors_act_as_higher_frequencies() => Check((_, analysis, impedance) =>
    {
        OutputImpedance scaled = WithValues(analysis, c => 4e-9 * c.Farads, s => s.Ohms, c => c.EsrOhms);
        AssertSame(impedance, scaled, f => f / 4e-9, r => r);
    });

    [Fact]
    public void Larger_resistances_act_as_larger_impedances_at_lower_frequencies() => Check((_, analysis, impedance) =>
    {
        OutputImpedance scaled = WithValues(analysis, c => c.Farads, s => 3e6 * s.Ohms, c => 3e6 * c.EsrOhms);
        AssertSame(impedance, scaled, f => f / 3e6, r => 3e6 * r);
    });

    [Fact]
    public void Another_numbering_of_nodes_and_elements_changes_nothing() => Check((sketch, _, impedance) =>
    {
        Random random = new(sketch.Switches.Count + (31 * sketch.NodeCount));
        int[] inner = [.. Enumerable.Range(3, sketch.NodeCount - 3)];
        random.Shuffle(inner);
        int[] nodes = [0, 1, 2, .. inner];
        SketchCapacitor[] capacitors = [.. sketch.Capacitors.Select(c => c with { Positive = nodes[c.Bottom], Bottom = nodes[c.Positive] })];
        SketchSwitch[] switches = [.. sketch.Switches.Select(s => s with { First = nodes[s.Second], Second = nodes[s.First] })];
        random.Shuffle(capacitors);
        random.Shuffle(switches);
        AssertSame(impedance, Of(sketch with { Capacitors = capacitors, Switches = switches }), f => f, r => r);
    });

    [Fact]
    public void Another_first_phase_changes_nothing() => Check((sketch, _, impedance) =>
    {
        int[] turned = [.. Enumerable.Range(1, sketch.PhaseCount).Select(j => j % sketch.PhaseCount)];
        AssertSame(impedance, Of(WithPhases(sketch, turned)), f => f, r => r);
    });

    [Fact]
    public void The_opposite_order_of_the_phases_changes_nothing() => Check((sketch, _, impedance) =>
    {
        // the reversed network is the adjoint one, whose output resistance is the same
        int[] reversed = [.. Enumerable.Range(0, sketch.PhaseCount).Reverse()];
        AssertSame(impedance, Of(WithPhases(sketch, reversed)), f => f, r => r);
    });

    [Fact]
    public void A_phase_cut_in_two_changes_nothing() => Check((sketch, _, impedance) =>
    {
        Fraction[] duties = [sketch.Duties[0] * new Fraction(1, 3), sketch.Duties[0] * new Fraction(2, 3), .. sketch.Duties.Skip(1)];
        AssertSame(impedance, Of(sketch with
        {
            Duties = duties,
            Switches = [.. sketch.Switches.Select(s => s with { Phases = (s.Phases << 1) | (s.Phases & 1) })],
        }), f => f, r => r);
    });

    private static void Check(Action<NetworkSketch, ModeAnalysis, OutputImpedance> law, [CallerMemberName] string name = "") => LawSample.Check(
        (sketch, analysis) =>
        {
            OutputImpedance impedance = OutputImpedance.Of(analysis);

            // where no capacitor matters the slow limit is zero up to rounding, and there is no corner
            if (impedance.CornerFrequencyHz > 1e-9)
            {
                law(sketch, analysis, impedance);
            }
        },
        iterations: 600,
        name: name);

    private static double Off(double expected, double actual) => Math.Abs(expected - actual) / expected;

    private static void AssertSame(OutputImpedance expected, OutputImpedance actual, Func<double, double> frequency, Func<double, double> ohms)
    {
        foreach (double f in s_timesCorner.Select(t => t * expected.CornerFrequencyHz))
        {
            double wanted = ohms(expected.Ohms(f)), got = actual.Ohms(frequency(f));
            Assert.True(Off(wanted, got) < 1e-11, $"At {f:R} Hz expected {wanted:R}, but got {got:R} ({Off(wanted, got):e1}).");
        }
    }

    private static OutputImpedance Of(NetworkSketch sketch) => OutputImpedance.Of(LawSample.Analyse(sketch));

    private static OutputImpedance WithValues(
        ModeAnalysis analysis, Func<Capacitor, double> farads, Func<Switch, double> ohms, Func<Capacitor, double> esrOhms)
    {
        Converter converter = analysis.Converter.WithValues(
            [.. analysis.Converter.Capacitors.Select(farads)],
            [.. analysis.Converter.Switches.Select(ohms)],
            [.. analysis.Converter.Capacitors.Select(esrOhms)]);
        return OutputImpedance.Of(analysis.WithValuesOf(converter));
    }

    // phases[j] is the old phase that takes place in the new phase j
    private static NetworkSketch WithPhases(NetworkSketch sketch, int[] phases) => sketch with
    {
        Duties = [.. phases.Select(old => sketch.Duties[old])],
        Switches = [.. sketch.Switches.Select(s => s with { Phases = phases.Select((old, j) => ((s.Phases >> old) & 1) << j).Sum() })],
    };
}
