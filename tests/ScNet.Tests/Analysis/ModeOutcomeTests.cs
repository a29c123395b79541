using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>What an analysis or its absence says of itself, and at a frequency.</summary>
public sealed class ModeOutcomeTests
{
    [Fact]
    public void An_outcome_with_a_result_says_what_the_analysis_says()
    {
        Converter converter = InductiveStages.MultiLevel(3, new Fractions.Fraction(1, 5)).Build();
        ModeOutcome outcome = ModeAnalysis.Try(converter, converter.Modes[0]);

        // that losses are left to decide comes after the topology
        Assert.Equal(DiagnosticCodes.BalancedByLosses, Assert.Single(outcome.Diagnostics).Code);
        Assert.Equal(outcome.Analysis!.Diagnostics, outcome.Diagnostics);
        Assert.StartsWith($"{converter.Name}, mode default: ratio 1/5, SSL ", outcome.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_mode_of_another_converter_is_refused_however_alike_it_is() =>
        Assert.Throws<ArgumentException>("mode", () => ModeAnalysis.Try(Half(), Half().Modes[0]));

    [Fact]
    public void All_modes_have_results_only_where_each_has()
    {
        Converter converter = Converter.Create("two modes").Input("vin").Output("vout").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p").Switch("s2", "n", "vout").Switch("s3", "p", "vout").Switch("s4", "n", "gnd")
            .Mode("half", ("s1", 1), ("s2", 1), ("s3", 2), ("s4", 2)).Mode("off").Build();
        ConverterAnalysis both = ConverterAnalysis.Of(converter);

        Assert.False(both.HasAllResults);
        Assert.Equal("half", Assert.Single(both.Results).Mode.Name);
        Assert.True(ConverterAnalysis.Of(Half()).HasAllResults);
    }

    [Fact]
    public void Limits_at_a_frequency_are_inverse_to_it_and_have_none_at_zero()
    {
        // 1/4 over 2 farads, and with fly and out side by side (9 + 3)/64 over one
        SlowSwitchingLimit slow = ModeAnalysis.Of(Half()).SlowSwitchingLimit;
        ChargeSharing sharing = ModeAnalysis.Of(Half(LoadKind.Current).Capacitor("out", "vout", "gnd", farads: 6).Build()).ChargeSharing!;

        Assert.Equal((0.125, 0.125 / 64), (slow.OhmsAtOneHertz, slow.Ohms(64)));
        Assert.Equal(6.0 / 64, sharing.OhmsAtOneHertz, 1e-15);
        Assert.Equal(6.0 / 64 / 8, sharing.Ohms(8), 1e-16);
        Assert.Throws<ArgumentOutOfRangeException>(() => slow.Ohms(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => sharing.Ohms(0));
    }

    [Fact]
    public void A_part_has_the_values_of_the_whole_that_it_is_asked_for()
    {
        Converter whole = Half(LoadKind.Stiff).Capacitor("other", "q", "r", farads: 3).Switch("t1", "vin", "q", on: 1, ohms: 5).Switch("t2", "r", "gnd", on: 1, ohms: 6).Build();
        ConverterPart part = ConverterPart.Of(whole, whole.Modes[0], [0], [0, 1, 2, 3]);
        Converter own = part.With(whole.WithValues(farads: [7, 8], ohms: [1, 2, 3, 4, 5, 6], esrOhms: [0.5, 0.25]));

        Assert.True(part.Delivers);
        Assert.Equal(("fly", 7.0, 0.5), (Assert.Single(own.Capacitors).Name, own.Capacitors[0].Farads, own.Capacitors[0].EsrOhms));
        Assert.Equal([1, 2, 3, 4], own.Switches.Select(s => s.Ohms));
        Assert.Same(whole, ConverterPart.Whole(whole, part.Topology).With(whole));
    }

    private static Converter Half() => Half(LoadKind.Stiff).Build();

    private static ConverterBuilder Half(LoadKind load) => Converter.Create("half").Input("vin").Output("vout", load)
        .Capacitor("fly", "p", "n", farads: 2)
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2);
}
