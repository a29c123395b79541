using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

public sealed class FamilyArgumentTests
{
    public static TheoryData<string, int> TooSmall => new()
    {
        { "series-parallel", 1 }, { "ladder", 1 }, { "dickson", 1 }, { "fibonacci", 0 }, { "doubler", 0 },
        { "cockcroft-walton", 0 }, { "polarity inverter", 0 }, { "recursive", 0 },
    };

    [Theory]
    [MemberData(nameof(TooSmall))]
    public void A_size_below_the_smallest_member_is_refused_by_name(string family, int size)
    {
        foreach (bool up in new[] { false, true })
        {
            ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => Build(family, size, up));
            Assert.Contains(error.ParamName, new[] { "ratio", "levels", "stages", "cells" });
            Assert.Equal(2, Build(family, size + 1, up).Phases.Count);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1e-9)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_value_that_is_not_finite_and_positive_is_refused_by_name(double value)
    {
        Assert.Equal("farads", Assert.Throws<ArgumentOutOfRangeException>(() => Ladder.StepDown(3, farads: value)).ParamName);
        Assert.Equal("ohms", Assert.Throws<ArgumentOutOfRangeException>(() => Dickson.StepUp(3, ohms: value)).ParamName);
    }

    [Fact]
    public void A_load_kind_that_does_not_exist_is_refused() =>
        Assert.Equal("load", Assert.Throws<ArgumentOutOfRangeException>(() => Doubler.StepUp(2, load: (LoadKind)7)).ParamName);

    [Theory]
    [InlineData(1000)]
    [InlineData(4000)]
    public void Long_members_have_the_documented_counts(int n)
    {
        Assert.Equal((n - 1, (3 * n) - 2), Counts(SeriesParallel.StepDown(n)));
        Assert.Equal(((2 * n) - 3, 2 * n), Counts(Ladder.StepDown(n)));
        Assert.Equal((n - 1, n + 4), Counts(Dickson.StepDown(n)));
        Assert.Equal((n, (3 * n) + 1), Counts(Fibonacci.StepUp(n)));
        Assert.Equal(((2 * n) - 1, 4 * n), Counts(Doubler.StepUp(n)));
        Assert.Equal((n, n + 5), Counts(CockcroftWalton.StepUp(n)));
        Assert.Equal((n, (3 * n) + 1), Counts(PolarityInverter.StepDown(n)));
    }

    [Fact]
    public void Ten_times_the_levels_take_ten_times_the_memory()
    {
        Ladder.StepDown(2_000);
        static double Bytes(int levels)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            Ladder.StepDown(levels);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Assert.InRange(Bytes(20_000) / Bytes(2_000), 8, 14);
    }

    private static (int Capacitors, int Switches) Counts(Converter converter) =>
        (converter.Capacitors.Count, converter.Switches.Count);

    private static Converter Build(string family, int size, bool up) => (family, up) switch
    {
        ("series-parallel", false) => SeriesParallel.StepDown(size),
        ("series-parallel", true) => SeriesParallel.StepUp(size),
        ("ladder", false) => Ladder.StepDown(size),
        ("ladder", true) => Ladder.StepUp(size),
        ("dickson", false) => Dickson.StepDown(size),
        ("dickson", true) => Dickson.StepUp(size),
        ("fibonacci", false) => Fibonacci.StepDown(size),
        ("fibonacci", true) => Fibonacci.StepUp(size),
        ("doubler", false) => Doubler.StepDown(size),
        ("doubler", true) => Doubler.StepUp(size),
        ("cockcroft-walton", false) => CockcroftWalton.StepDown(size),
        ("cockcroft-walton", true) => CockcroftWalton.StepUp(size),
        ("polarity inverter", false) => PolarityInverter.StepDown(size),
        ("polarity inverter", true) => PolarityInverter.StepUp(size),
        ("recursive", false) => RecursiveCascade.StepDown(size, 1),
        _ => RecursiveCascade.StepUp(size, 1),
    };
}
