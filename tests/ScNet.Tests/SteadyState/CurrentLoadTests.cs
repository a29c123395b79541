using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Tests.Laws;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// A load current on a finite output capacitor. Its slow asymptote lies below the charge-multiplier
/// formula, since what capacitors deliver at a steady rate costs nothing there.
/// </summary>
[Trait("Kind", "Law")]
public sealed class CurrentLoadTests
{
    /// <summary>
    /// A divider by two with flying capacitor F, output capacitor O, loop resistance R in both equal
    /// phases of h = T/2 and one ampere of load, by hand. Let x be the output voltage less half the input,
    /// y the flying capacitor's less half the input. In phase 2 the current i = (y - x)/R leaves F, so
    /// y' = -i/F, x' = (i - 1)/O: i tends to s = F/(F + O) with the time constant r = R F O/(F + O).
    /// The phases mirror one another: x(h) = x(0), hence ∫i = h, and y(h) = -y(0), hence y(0) = h/(2F).
    /// With i = s + A e^(-t/r), A r (1 - e^(-h/r)) = (1 - s) h, the mean of y is
    /// (1 - s)/F · [r - (h/2) coth(h/(2r))], and since mean x = mean y - R,
    ///     R_out = R + O/(F (F + O)) · [coth(1/(4 f r))/(4 f) - r].
    /// </summary>
    [Theory]
    [InlineData(1, 1, 1)]
    [InlineData(2e-9, 0.5e-9, 3)]
    [InlineData(1, 1e9, 1)]
    [InlineData(1, 1e-3, 1)]
    [InlineData(1e-6, 1, 1e3)]
    public void A_loaded_divider_follows_its_closed_form(double fly, double output, double loop)
    {
        OutputImpedance impedance = OutputImpedance.Of(Divider(fly, output, loop));
        double r = loop * fly * output / (fly + output), share = output / (fly * (fly + output));
        for (int k = -21; k <= 21; k++)
        {
            double f = Math.Pow(10, k / 7.0) / (4 * r);
            double expected = loop + (share * r * ModalFunctionsOf(1 / (4 * f * r)));
            Assert.Equal(expected, impedance.Ohms(f), 1e-12 * expected);
        }

        // x coth x - 1, which is the bracket over r, by its series where it would cancel
        static double ModalFunctionsOf(double x) => x < 1e-2 ? x * x * ((1.0 / 3) - (x * x / 45) + (2 * x * x * x * x / 945)) : (x / Math.Tanh(x)) - 1;
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 20)]
    [InlineData(3, 0.1)]
    public void The_slow_asymptote_of_a_loaded_divider_is_below_the_charge_multiplier_formula(double fly, double output)
    {
        // from the closed form above: O/(4 F (F + O)) against 1/(4 F)
        ModeAnalysis analysis = Divider(fly, output, 1);
        OutputImpedance impedance = OutputImpedance.Of(analysis);
        Assert.Equal(output / (4 * fly * (fly + output)), impedance.Ohms(1e-12) * 1e-12, 1e-10 / fly);
        Assert.Equal(1 / (4 * fly), analysis.SlowSwitchingLimit.OhmsAtOneHertz, 1e-12 / fly);
    }

    /// <summary>
    /// Where R_out = A T + B, B is the sum of R (2 g q - g²)/D over all resistances (docs/theory/output-impedance.md, "One phase"), by
    /// hand: a divider by three whose string of 300 Ω lasts nine tenths of the period. It brings q = 1/3 of the charge there, and at a
    /// steady rate g = 0.9 of it but for the share of the output capacitor; in the rest each of two branches of 2 Ω brings 1/3, and
    /// g = 0.05. The string's part, -69, outweighs the other, 1.2: impedance times frequency falls as the frequency rises.
    /// </summary>
    [Fact]
    public void With_a_load_current_impedance_times_frequency_can_fall_as_the_frequency_rises()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("long string").Input("vin").Output("vout", LoadKind.Current).Duties(0.9, 0.1)
            .Capacitor("fly1", "p1", "n1", 1e-9).Capacitor("fly2", "p2", "n2", 1e-9).Capacitor("out", "vout", "gnd", 1e-12)
            .Switch("s1", "vin", "p1", on: 1, ohms: 100).Switch("s2", "n1", "p2", on: 1, ohms: 100).Switch("s3", "n2", "vout", on: 1, ohms: 100)
            .Switch("t1", "p1", "vout", on: 2, ohms: 1).Switch("b1", "n1", "gnd", on: 2, ohms: 1)
            .Switch("t2", "p2", "vout", on: 2, ohms: 1).Switch("b2", "n2", "gnd", on: 2, ohms: 1).Build());
        OutputImpedance impedance = OutputImpedance.Of(analysis);
        double g1 = 0.9 * 0.5e-9 / 0.501e-9, g2 = 0.05 * 2e-9 / 2.001e-9;
        double expected = (300 * ((2 * g1 / 3) - (g1 * g1)) / 0.9) + (2 * 2 * ((2 * g2 / 3) - (g2 * g2)) / 0.1);
        double slope = ((1e6 * impedance.Ohms(1e6)) - (1e4 * impedance.Ohms(1e4))) / (1e6 - 1e4);
        Assert.True(expected < -60);
        Assert.Equal(expected, slope, 1e-4 * -expected);
        Assert.True(impedance.Ohms(1e6) < impedance.Ohms(1e4));
    }

    /// <summary>
    /// Low frequencies on random networks: R_out = A T + B up to exponentially little. A comes from the
    /// lossless network, written down densely: in each phase first impulses equalise what is closed on
    /// each other, then the load discharges the capacitors along a straight line.
    /// </summary>
    [Fact]
    public void The_slow_asymptote_is_that_of_impulses_and_straight_lines()
    {
        int compared = 0;
        ConsistentNetworks.Gen(LoadKind.Current).Select(s => NetworkSketch.Of(s.Converter)).Holds(
            sketch =>
            {
                if (LawSample.Try(sketch).Analysis is not { } analysis)
                {
                    return;
                }

                OutputImpedance impedance = OutputImpedance.Of(analysis);
                const double Period = 1e8;
                double slope = (impedance.Ohms(0.5 / Period) - impedance.Ohms(1 / Period)) / Period;
                Assert.Equal(Lossless(analysis), slope, 1e-7);
                Assert.True(slope <= analysis.SlowSwitchingLimit.OhmsAtOneHertz + 1e-9, $"{slope:R}");
                Interlocked.Increment(ref compared);
            },
            count: 70);
        Assert.True(compared > LawCheck.Total(70) / 14, $"only {compared}");
    }

    // The output resistance times frequency: one second, one ampere, no resistance, the input at zero volts.
    private static double Lossless(ModeAnalysis analysis)
    {
        DenseSystem system = new();
        Converter converter = analysis.Converter;
        int phases = converter.Phases.Count;
        PhaseUnknowns[] impulses = [.. converter.Phases.Select(p => PhaseUnknowns.Add(system, converter, analysis.Mode, p.Number))];
        PhaseUnknowns[] ramps = [.. converter.Phases.Select(p => PhaseUnknowns.Add(system, converter, analysis.Mode, p.Number))];
        int[][] starts = [.. converter.Phases.Select(_ => system.Variables(converter.Nodes.Count))];
        int[][] ends = [.. converter.Phases.Select(_ => system.Variables(converter.Nodes.Count))];
        Dictionary<string, int> node = converter.Nodes.Select((name, i) => (name, i)).ToDictionary(n => n.name, n => n.i);
        for (int j = 0; j < phases; j++)
        {
            system.Require(0, (impulses[j].Output, 1));
            system.Require(converter.Phases[j].Duty.ToDouble(), (ramps[j].Output, 1));
            foreach (int[] potentials in new[] { starts[j], ends[j] })
            {
                system.Require(0, (potentials[node[Converter.ReferenceNode]], 1));
                system.Require(0, (potentials[node[converter.InputNode]], 1));
                for (int s = 0; s < converter.Switches.Count; s++)
                {
                    if (analysis.Mode.ClosedPhases[s].Contains(j + 1))
                    {
                        system.Require(0, (potentials[node[converter.Switches[s].FirstNode]], 1), (potentials[node[converter.Switches[s].SecondNode]], -1));
                    }
                }
            }

            for (int c = 0; c < converter.Capacitors.Count; c++)
            {
                Capacitor capacitor = converter.Capacitors[c];
                int positive = node[capacitor.PositiveNode], bottom = node[capacitor.BottomNode];
                int[] before = ends[(j + phases - 1) % phases];
                void Move(int[] from, int[] to, int charge) => system.Require(
                    0, (to[positive], 1), (to[bottom], -1), (from[positive], -1), (from[bottom], 1), (charge, -1 / capacitor.Farads));
                Move(before, starts[j], impulses[j].Capacitors[c]);
                Move(starts[j], ends[j], ramps[j].Capacitors[c]);
            }
        }

        Vector<double>? x = system.Solve();
        Assert.NotNull(x);
        int output = node[converter.OutputNode];
        return -Enumerable.Range(0, phases).Sum(j => converter.Phases[j].Duty.ToDouble() * 0.5 * (x[starts[j][output]] + x[ends[j][output]]));
    }

    private static ModeAnalysis Divider(double fly, double output, double loop)
    {
        Converter converter = Converter.Create("loaded half").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("fly", "p", "n", fly).Capacitor("out", "vout", Converter.ReferenceNode, output)
            .Switch("s1", "vin", "p", on: 1, 0.3 * loop).Switch("s2", "n", "vout", on: 1, 0.7 * loop)
            .Switch("s3", "p", "vout", on: 2, 0.5 * loop).Switch("s4", "n", Converter.ReferenceNode, on: 2, 0.5 * loop).Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }
}
