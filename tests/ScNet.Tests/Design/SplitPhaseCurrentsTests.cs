using Fractions;
using ScNet.Design;
using ScNet.Tests.SteadyState.Conduction;
using ScNet.Topologies;

namespace ScNet.Tests.Design;

/// <summary>Split phases of converters with several held currents, with capacitors that rest and of what no split makes soft.</summary>
public sealed class SplitPhaseCurrentsTests
{
    // (n - 2)/(4n) and (n + 2)/(4n) for n = 4
    private static readonly Fraction[] s_quarter = [new(1, 8), new(3, 8), new(1, 8), new(3, 8)];

    // on average the coil carries the load current, and the capacitor at the output none
    [Fact]
    public void A_load_current_behind_the_coil_changes_nothing()
    {
        Converter loaded = Quarter(LoadKind.Current, builder => builder.Capacitor("out", "vout", "gnd", 1));
        SplitPhase split = SplitPhase.Of(loaded, loaded.Modes[0]);
        Assert.True(split.IsSoft, split.Reason);
        Assert.Equal(s_quarter, split.Durations);
        Assert.Equal(LoadKind.Current, split.Converter.Load);
    }

    [Fact]
    public void A_capacitor_across_the_input_that_shares_no_charge_changes_nothing()
    {
        Converter decoupled = Quarter(LoadKind.Stiff, builder => builder.Capacitor("in", "vin", "gnd", 1));
        SplitPhase split = SplitPhase.Of(decoupled, decoupled.Modes[0]);
        Assert.True(split.IsSoft, split.Reason);
        Assert.Equal(s_quarter, split.Durations);
    }

    // in series with a capacitor it carries no current on average
    [Fact]
    public void A_coil_that_rests_changes_nothing()
    {
        Converter fed = InductorFed.Behind(Dickson.StepDown(4));
        ConverterBuilder builder = Converter.Create("trap").Input(fed.InputNode).Output(fed.OutputNode, LoadKind.Current).Duties([.. fed.Phases.Select(p => p.Duty)])
            .Capacitor("out", "vout", "gnd", 1).Inductor("trap", "vout", "trap").Capacitor("trapped", "trap", "gnd", 1);
        builder.AddElements(fed, string.Empty, node => node);
        Converter trap = builder.Mode(Mode.DefaultName, [.. fed.Entries(fed.Modes[0], string.Empty, p => [p])]).Build();
        SplitPhase split = SplitPhase.Of(trap, trap.Modes[0]);
        Assert.True(split.IsSoft, split.Reason);
        Assert.Equal(s_quarter, split.Durations);
    }

    // 1 F at the output for half of the period gives half of the charge, which the input gives back at once: f (I/2f)²/2C
    [Fact]
    public void A_capacitor_that_only_the_input_charges_stays_as_it_is()
    {
        Converter converter = Converter.Create("Tank").Input("vin").Output("vout", LoadKind.Current).Capacitor("tank", "p", "gnd", 1)
            .Switch("direct", "vin", "vout", 1).Switch("charge", "vin", "p", 1).Switch("discharge", "p", "vout", 2).Build();
        SplitPhase split = SplitPhase.Of(converter, converter.Modes[0]);
        Assert.False(split.IsSoft);
        Assert.Same(converter, split.Converter);
        Assert.Equal([1, 2], split.OriginalPhases);
        Assert.Equal(0.125, split.OhmsAtOneHertz, 1e-12);
        Assert.StartsWith("Tank: phases of 1/2, 1/2; 0.125 Ω of charge sharing at 1 Hz left: ", split.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(split.Reason, split.ToString(), StringComparison.Ordinal);
    }

    // one capacitor meets no other
    [Fact]
    public void What_is_soft_as_it_is_stays_the_same()
    {
        Converter soft = InductorFed.Behind(SeriesParallel.StepDown(2));
        SplitPhase same = SplitPhase.Of(soft, soft.Modes[0]);
        Assert.Same(soft, same.Converter);
        Assert.Same(soft.Modes[0], same.Mode);
        Assert.Equal([1, 2], same.OriginalPhases);
        Assert.Equal(0, same.OhmsAtOneHertz);
        Assert.Equal($"{soft.Name}: phases of 1/2, 1/2; fully soft", same.ToString());
    }

    // charged in a quarter and discharged in the rest no load can be carried: no current tells the scale, and none is needed
    [Fact]
    public void Durations_that_carry_no_load_are_replaced()
    {
        Converter fed = InductorFed.Behind(SeriesParallel.StepDown(2)).WithDuties(new(1, 4), new(3, 4));
        SplitPhase split = SplitPhase.Of(fed, fed.Modes[0]);
        Assert.True(split.IsSoft, split.Reason);
        Assert.Equal([new(1, 2), new(1, 2)], split.Durations);
    }

    [Fact]
    public void Phases_that_a_current_ends_are_not_split()
    {
        Converter stage = Stages.StepDown(new(1, 4));
        Assert.Equal("mode", Assert.Throws<ArgumentException>(() => SplitPhase.Of(stage, stage.Modes[0])).ParamName);
    }

    private static Converter Quarter(LoadKind load, Func<ConverterBuilder, ConverterBuilder> more)
    {
        Converter fed = InductorFed.Behind(Dickson.StepDown(4));
        ConverterBuilder builder = Converter.Create("quarter").Input(fed.InputNode).Output(fed.OutputNode, load).Duties([.. fed.Phases.Select(p => p.Duty)]);
        builder.AddElements(fed, string.Empty, node => node);
        return more(builder).Mode(Mode.DefaultName, [.. fed.Entries(fed.Modes[0], string.Empty, p => [p])]).Build();
    }
}
