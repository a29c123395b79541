using Fractions;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

public sealed class CombineModesTests
{
    [Fact]
    public void A_cascade_has_a_mode_for_every_choice_of_modes()
    {
        Converter cascade = Combine.Cascade(RecursiveCascade.Reconfigurable(2), SeriesParallel.StepDown(3), RecursiveCascade.Reconfigurable(1), RecursiveCascade.Reconfigurable(2));
        Assert.Equal(
            ["1/4 × 1/4", "1/4 × 1/2", "1/4 × 3/4", "1/2 × 1/4", "1/2 × 1/2", "1/2 × 3/4", "3/4 × 1/4", "3/4 × 1/2", "3/4 × 3/4"],
            cascade.Modes.Select(m => m.Name));
        Assert.Equal(Quantity.Exact(3, 4 * 3 * 2 * 2), ModeAnalysis.Of(cascade, cascade.Modes["3/4 × 1/2"]).Ratio);
    }

    [Fact]
    public void The_mode_of_converters_with_one_mode_each_keeps_the_usual_name()
    {
        Assert.Equal(Mode.DefaultName, Assert.Single(Combine.Cascade(Ladder.StepDown(2), Ladder.StepDown(2)).Modes).Name);
        Assert.Equal(Mode.DefaultName, Assert.Single(Combine.Parallel(Ladder.StepDown(2), Ladder.StepDown(2)).Modes).Name);
    }

    [Fact]
    public void Parallel_modes_pair_by_name()
    {
        Converter recursive = RecursiveCascade.Reconfigurable(2);
        Converter both = Combine.Parallel(recursive, Reversed(recursive));
        Assert.Equal(recursive.Modes.Select(m => m.Name), both.Modes.Select(m => m.Name));
        Assert.All(both.Modes, m => Assert.Equal(m.Name, ModeAnalysis.Of(both, m).Ratio.ToString()));
    }

    [Fact]
    public void A_single_mode_goes_with_every_mode_of_the_other() => Assert.Equal(
        ["1/4", "1/2", "3/4"], Combine.Parallel(SeriesParallel.StepDown(2), RecursiveCascade.Reconfigurable(2)).Modes.Select(m => m.Name));

    [Fact]
    public void Modes_without_a_partner_are_refused_by_name()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() =>
            Combine.Parallel(RecursiveCascade.Reconfigurable(2), TwoModes()));
        Assert.Contains("'1/4', '3/4', 'off'", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Phases_that_do_not_fit_are_refused_with_both_lists()
    {
        Converter uneven = Half([new(1, 3), new(2, 3)]);
        string message = Assert.Throws<ArgumentException>(() => Combine.Cascade(Ladder.StepDown(2), uneven)).Message;
        Assert.Contains("1/2, 1/2, but they are 1/3, 2/3", message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Combine.Cascade(Ladder.StepDown(2), BinaryConverter.StepDown(2, 1)));
        Assert.Throws<ArgumentException>(() => Combine.Parallel(uneven, uneven, rotation: 1));
        Assert.Contains("turned by 1", Assert.Throws<ArgumentException>(() => Combine.Parallel(uneven, uneven, 1)).Message, StringComparison.Ordinal);
        Assert.Equal(Quantity.Exact(1, 2), FamilyTests.Analyse(Combine.Parallel(uneven, Half([new(2, 3), new(1, 3)]), rotation: 1)).Ratio);
    }

    [Fact]
    public void Names_of_phases_values_and_series_resistances_are_kept()
    {
        Converter first = Half([new(1, 4), new(3, 4)], "charge", "discharge");
        Converter whole = Combine.Cascade([first, first], dcFarads: 7e-9);
        Assert.Equal(["charge", "discharge"], whole.Phases.Select(p => p.Name));
        Assert.Equal([new Fraction(1, 4), new Fraction(3, 4)], whole.Phases.Select(p => p.Duty));
        Assert.Equal([3e-9, 3e-9, 7e-9], whole.Capacitors.Select(c => c.Farads));
        Assert.Equal([0.5, 0.5, 0], whole.Capacitors.Select(c => c.EsrOhms));
        Assert.All(whole.Switches, s => Assert.Equal(2, s.Ohms));
        Assert.Equal(["1.fly", "2.fly", "dc1"], whole.Capacitors.Select(c => c.Name));
        Assert.Equal(["gnd", "vin", "vout"], whole.Nodes.Take(3));
        Assert.Equal(["1.n", "1.p", "2.n", "2.p", "mid1"], whole.Nodes.Skip(3).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Other_mistakes_are_refused()
    {
        Converter stiff = Ladder.StepDown(2);
        Assert.Throws<ArgumentException>(() => Combine.Cascade());
        Assert.Throws<ArgumentNullException>(() => Combine.Cascade(stiff, null!));
        Assert.Equal("dcFarads", Assert.Throws<ArgumentOutOfRangeException>(() => Combine.Cascade([stiff, stiff], 0)).ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => Combine.Parallel(stiff, stiff, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Combine.Parallel(stiff, stiff, -1));
        Assert.Throws<ArgumentException>(() => Combine.Parallel(stiff, Ladder.StepDown(2, load: LoadKind.Current)));
    }

    private static Converter Half(Fraction[] duties, params string[] names)
    {
        ConverterBuilder builder = Converter.Create("Half").Input("supply").Output("load").Duties(duties)
            .Capacitor("fly", "p", "n", 3e-9, 0.5)
            .Switch("s1", "supply", "p", 1, 2).Switch("s2", "n", "load", 1, 2)
            .Switch("s3", "p", "load", 2, 2).Switch("s4", "n", "gnd", 2, 2);
        return (names.Length > 0 ? builder.PhaseNames(names) : builder).Build();
    }

    private static Converter TwoModes() => Converter.Create("Two modes").Input("vin").Output("vout")
        .Switch("s", "vin", "vout").Mode("1/2", ("s", 1)).Mode("off").Build();

    // The same converter with its modes in the opposite order.
    private static Converter Reversed(Converter converter)
    {
        ConverterBuilder builder = Converter.Create("Reversed").Input(converter.InputNode).Output(converter.OutputNode);
        foreach (Capacitor c in converter.Capacitors)
        {
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode);
        }

        foreach (Switch s in converter.Switches)
        {
            builder.Switch(s.Name, s.FirstNode, s.SecondNode);
        }

        foreach (Mode m in converter.Modes.Reverse())
        {
            builder.Mode(m.Name, [.. converter.Switches.Select((s, i) => (s.Name, m.ClosedPhases[i]))]);
        }

        return builder.Build();
    }
}
