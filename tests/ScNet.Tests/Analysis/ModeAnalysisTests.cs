using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Tests.Stress;

namespace ScNet.Tests.Analysis;

public class ModeAnalysisTests
{
    private static ModeAnalysis Analyse(Converter converter) => ModeAnalysis.Of(converter);

    [Fact]
    public void A_ten_to_one_ladder_allocates_little()
    {
        Converter converter = Ladders.Of(10);
        Analyse(converter);
        Analyse(converter);
        long before = GC.GetAllocatedBytesForCurrentThread();
        ModeAnalysis analysis = Analyse(converter);
        long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.Equal(Quantity.Exact(1, 10), analysis.Ratio);
        Assert.InRange(bytes, 1, 40_000);
    }

    [Fact]
    public void A_thousand_level_ladder_has_exactly_a_thousandth()
    {
        ModeAnalysis analysis = Analyse(Ladders.Of(1000));
        Assert.Equal(Quantity.Exact(1, 1000), analysis.Ratio);
        Assert.All(analysis.IdealPoint.CapacitorVoltages, v => Assert.Equal(Quantity.Exact(1, 1000), v));
        Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
        Assert.Equal(Quantity.Exact(1, 1000), new Fraction(1) * analysis.ChargeFlow.Input.Aggregate(Fraction.Zero, (sum, q) => sum + q.ToFraction()));
    }

    // Each stage adds the last two voltages, so that they grow as Fibonacci's numbers do.
    internal static ConverterBuilder Fibonacci(int stages)
    {
        ConverterBuilder builder = Converter.Create("Fibonacci").Input("vin").Output("vout");
        string before = Converter.ReferenceNode, last = "vin";
        for (int k = 1; k <= stages; k++)
        {
            // charged from the last voltage in one phase, stacked on the one before it in the other
            int charge = 1 + (k % 2), stack = 3 - charge;
            string top = k == stages ? "vout" : $"v{k}";
            builder.Capacitor($"c{k}", $"p{k}", $"n{k}")
                .Switch($"a{k}", last, $"p{k}", on: charge).Switch($"b{k}", $"n{k}", "gnd", on: charge)
                .Switch($"c{k}s", $"n{k}", before == Converter.ReferenceNode ? "vin" : before, on: stack).Switch($"d{k}", $"p{k}", top, on: stack);
            before = last;
            last = top;
        }

        return builder;
    }

    [Fact]
    public void A_long_cascade_whose_numbers_outgrow_machine_integers_is_exact()
    {
        foreach (int stages in new[] { 1, 2, 5, 40, 120 })
        {
            ModeAnalysis analysis = Analyse(Fibonacci(stages).Build());
            (BigInteger before, BigInteger last) = (1, 1);
            for (int k = 1; k <= stages; k++)
            {
                (before, last) = (last, before + last);
            }

            Assert.Equal(Quantity.Exact(new Fraction(last)), analysis.Ratio);
            Assert.Equal((double)last, analysis.Ratio.ToDouble(), (double)last * 1e-15);
            Assert.True(double.IsFinite(analysis.FastSwitchingLimit.Ohms));
        }
    }

    [Fact]
    public void Duties_of_eighteen_digits_stay_exact()
    {
        Fraction duty = new(123456789012345678, 1_000_000_000_000_000_000);
        Converter converter = Converter.Create("buck").Input("vin").Output("x", LoadKind.Current).Duties(duty, Fraction.One - duty)
            .Capacitor("in", "vin", "gnd")
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Build();
        ModeAnalysis analysis = Analyse(converter);
        Assert.Equal(Quantity.Exact(duty), analysis.Ratio);
        Assert.Equal([Quantity.Exact(duty), Quantity.Exact(Fraction.One - duty)], analysis.ChargeFlow.Output);
        Assert.Equal(Quantity.Exact(duty), analysis.FastSwitchingLimit.SwitchCoefficients[0]);
    }

    [Fact]
    public void Long_duties_overflow_into_big_integers_with_the_same_meaning()
    {
        Fraction duty = new(123456789012345678, 1_000_000_000_000_000_000);
        ConverterBuilder Half() => Converter.Create("half").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2);
        ModeAnalysis analysis = Analyse(Half().Duties(duty, Fraction.One - duty).Build());
        Assert.Equal(Quantity.Exact(new Fraction(1, 4) / duty), analysis.FastSwitchingLimit.SwitchCoefficients[0]);
        Assert.Equal(Quantity.Exact(new Fraction(1, 4) / (Fraction.One - duty)), analysis.FastSwitchingLimit.SwitchCoefficients[2]);
    }

    [Fact]
    public void Other_component_values_give_what_a_fresh_analysis_gives()
    {
        Random random = new(11);
        foreach (Converter converter in new[] { Ladders.Of(5), Ladders.Of(5, hasTopCapacitor: true) })
        {
            double[] Draw(int count) => [.. Enumerable.Range(0, count).Select(_ => 0.1 + random.NextDouble())];
            Converter other = converter.WithValues(Draw(converter.Capacitors.Count), Draw(converter.Switches.Count), Draw(converter.Capacitors.Count));
            ModeAnalysis fresh = Analyse(other), derived = Analyse(converter).WithValuesOf(other);
            Assert.Same(other, derived.Converter);
            AssertSame(fresh, derived);
            Assert.NotEqual(Analyse(converter).SlowSwitchingLimit.OhmsAtOneHertz, derived.SlowSwitchingLimit.OhmsAtOneHertz);
        }
    }

    [Fact]
    public void Values_of_another_topology_are_refused() => Assert.Throws<ArgumentException>(
        () => Analyse(Ladders.Of(3)).WithValuesOf(Ladders.Of(3)));

    [Fact]
    public async Task Many_threads_on_one_converter_find_the_same()
    {
        foreach (Converter converter in new[] { Ladders.Of(8), Ladders.Of(6, hasTopCapacitor: true), Fibonacci(100).Build() })
        {
            ModeAnalysis expected = Analyse(converter);
            ModeAnalysis[] all = await Task.WhenAll(Enumerable.Range(0, 64).Select(_ => Task.Run(() => Analyse(converter))));
            Assert.All(all, a => AssertSame(expected, a));
        }
    }

    [Fact]
    public void A_mode_without_a_result_tells_why_when_asked_for_one()
    {
        Converter converter = Converter.Create("open").Input("vin").Output("vout").Switch("s", "vin", "vout").Build();
        ModeOutcome outcome = ModeAnalysis.Try(converter, converter.Modes[0]);
        Assert.False(outcome.HasResult);
        Assert.Null(outcome.Analysis);
        Assert.Equal(DiagnosticSeverity.Error, outcome.Diagnostics[0].Severity);
        foreach (Func<ModeAnalysis> ask in (Func<ModeAnalysis>[])[
            outcome.Require,
            () => ModeAnalysis.Of(converter),
            () => ModeAnalysis.Of(converter, converter.Modes[0]),
            () => ModeAnalysis.Of(converter, Mode.DefaultName)])
        {
            ScNetException exception = Assert.Throws<ScNetException>(ask);
            Assert.Equal(outcome.Diagnostics.Select(d => d.Code), exception.Diagnostics.Select(d => d.Code));
            Assert.Contains(outcome.Diagnostics[0].Message, exception.Message, StringComparison.Ordinal);
        }

        Assert.Contains("no result", outcome.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_converter_of_several_modes_is_asked_for_one_of_them()
    {
        Converter gears = RatedNetworks.Example("memory-gears");
        ArgumentException several = Assert.Throws<ArgumentException>(() => ModeAnalysis.Of(gears));
        Assert.All(gears.Modes, m => Assert.Contains(m.Name, several.Message, StringComparison.Ordinal));
        Assert.All(gears.Modes, m => Assert.Same(m, ModeAnalysis.Of(gears, m.Name).Mode));
        Assert.Throws<ArgumentException>(() => ModeAnalysis.Of(gears, "none"));
    }

    [Fact]
    public void Every_result_says_something_readable()
    {
        Converter converter = Ladders.Of(2);
        ModeAnalysis analysis = Analyse(converter);
        Assert.Equal("2:1 ladder, mode default: ratio 1/2, SSL 0.25 Ω at 1 Hz, FSL 2 Ω", analysis.ToString());
        Assert.Equal("ratio 1/2, capacitor voltages [1/2]", analysis.IdealPoint.ToString());
        Assert.Equal("decided by Topology: input [1/2, 0], output [1/2, 1/2], capacitors {[1/2, -1/2]}", analysis.ChargeFlow.ToString());
        Assert.Equal("0.25 Ω at 1 Hz from coefficients [1/4]", analysis.SlowSwitchingLimit.ToString());
        Assert.Equal("2 Ω from coefficients [1/2, 1/2, 1/2, 1/2] of switches and [1] of capacitors", analysis.FastSwitchingLimit.ToString());
        Assert.Equal("peaks [1/2, 1/2, 1/2, 1/2]", analysis.BlockingVoltages.ToString());
        Assert.Equal("2:1 ladder: 1 of 1 modes with a result", ConverterAnalysis.Of(converter).ToString());
        Assert.Equal("{[1/2, -1/2]}", analysis.ChargeFlow.Capacitors.ToString());
    }

    private static void AssertSame(ModeAnalysis expected, ModeAnalysis actual)
    {
        Assert.Equal(expected.Diagnostics.Select(d => d.ToString()), actual.Diagnostics.Select(d => d.ToString()));
        Assert.Equal(expected.Ratio, actual.Ratio);
        Assert.Equal(expected.IdealPoint.CapacitorVoltages, actual.IdealPoint.CapacitorVoltages);
        Assert.Equal(expected.IdealPoint.NodePotentials, actual.IdealPoint.NodePotentials);
        Assert.Equal(expected.BlockingVoltages.Switches, actual.BlockingVoltages.Switches);
        Assert.Equal(expected.ChargeFlow.DeterminedBy, actual.ChargeFlow.DeterminedBy);
        Assert.Equal(expected.ChargeFlow.Capacitors, actual.ChargeFlow.Capacitors);
        Assert.Equal(expected.ChargeFlow.Switches, actual.ChargeFlow.Switches);
        Assert.Equal(expected.ChargeFlow.Input, actual.ChargeFlow.Input);
        Assert.Equal(expected.ChargeFlow.Output, actual.ChargeFlow.Output);
        Assert.Equal(expected.SlowSwitchingLimit.Coefficients, actual.SlowSwitchingLimit.Coefficients);
        Assert.Equal(expected.SlowSwitchingLimit.OhmsAtOneHertz, actual.SlowSwitchingLimit.OhmsAtOneHertz);
        Assert.Equal(expected.FastSwitchingLimit.SwitchCoefficients, actual.FastSwitchingLimit.SwitchCoefficients);
        Assert.Equal(expected.FastSwitchingLimit.Ohms, actual.FastSwitchingLimit.Ohms);
    }
}
