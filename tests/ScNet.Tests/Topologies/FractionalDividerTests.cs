using Fractions;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

/// <summary>Source of the bound from memory: M. S. Makowski and D. Maksimovic, PESC 1995.</summary>
public sealed class FractionalDividerTests
{
    public static TheoryData<int, int> Fractions
    {
        get
        {
            TheoryData<int, int> fractions = [];
            for (int p = 1; p <= 5; p++)
            {
                for (int q = 1; q <= 5; q++)
                {
                    fractions.Add(p, q);
                }
            }

            return fractions;
        }
    }

    [Theory]
    [MemberData(nameof(Fractions))]
    public void Every_fraction_up_to_five_has_its_divider_of_at_most_three_capacitors(int p, int q)
    {
        foreach (LoadKind load in Enum.GetValues<LoadKind>())
        {
            Converter converter = FractionalDivider.Of(p, q, farads: 2e-9, ohms: 3, load);
            ModeAnalysis analysis = FamilyTests.Analyse(converter);
            Assert.Equal(Quantity.Exact(p, q), analysis.Ratio);
            Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
            Assert.Empty(analysis.Diagnostics);
            Assert.Equal(2, converter.Phases.Count);
            (int capacitors, int switches) = Counts(new Fraction(p, q).Reduce());
            Assert.Equal(load == LoadKind.Stiff ? capacitors : capacitors + 1, converter.Capacitors.Count);
            Assert.Equal(switches, converter.Switches.Count);
            Assert.All(converter.Capacitors, c => Assert.Equal(2e-9, c.Farads));
            Assert.All(converter.Switches, s => Assert.Equal(3, s.Ohms));
            Assert.All(analysis.BlockingVoltages.Peaks, peak => Assert.True(peak.IsExact && peak.Sign >= 0));
            Assert.All(analysis.IdealPoint.CapacitorVoltages, voltage => Assert.Equal(1, voltage.Sign));
        }
    }

    [Theory]
    [MemberData(nameof(Fractions))]
    public void Run_backwards_the_resistances_grow_with_the_square_of_the_ratio(int p, int q)
    {
        ModeAnalysis there = FamilyTests.Analyse(FractionalDivider.Of(p, q));
        ModeAnalysis back = FamilyTests.Analyse(FractionalDivider.Of(q, p));
        double square = (double)q * q / (p * p);
        Assert.Equal(square * there.SlowSwitchingLimit.OhmsAtOneHertz, back.SlowSwitchingLimit.OhmsAtOneHertz, 12);
        Assert.Equal(square * there.FastSwitchingLimit.Ohms, back.FastSwitchingLimit.Ohms, 10);
    }

    [Theory]
    [InlineData(1, 2, 1, 1)]
    [InlineData(2, 3, 8, 9)]
    [InlineData(3, 4, 3, 4)]
    [InlineData(4, 5, 18, 25)]
    public void The_criterion_is_that_of_the_built_converter(int p, int q, int productNumerator, int productDenominator)
    {
        ModeAnalysis analysis = FamilyTests.Analyse(FractionalDivider.Of(p, q));
        Fraction product = analysis.BlockingVoltages.Peaks.Zip(analysis.ChargeFlow.Switches)
            .Select(s => (s.First.ToFraction() * s.Second.Peak().ToFraction()).Abs())
            .Aggregate((a, b) => a + b).Reduce();
        Assert.Equal(new Fraction(productNumerator, productDenominator), product);
    }

    [Theory]
    [InlineData(2, 4, 1, 2)]
    [InlineData(15, 10, 3, 2)]
    [InlineData(600, 300, 2, 1)]
    public void Common_factors_do_not_matter(int p, int q, int lowestP, int lowestQ)
    {
        Converter converter = FractionalDivider.Of(p, q);
        Assert.Equal(Quantity.Exact(lowestP, lowestQ), FamilyTests.Analyse(converter).Ratio);
        Assert.Equal(FractionalDivider.Of(lowestP, lowestQ).Name, converter.Name);
    }

    [Theory]
    [InlineData(0, 1, "numerator")]
    [InlineData(-1, 2, "numerator")]
    [InlineData(1, 0, "denominator")]
    [InlineData(6, 5, "numerator")]
    [InlineData(1, 6, "denominator")]
    [InlineData(3, 7, "denominator")]
    public void A_ratio_out_of_range_is_refused_by_name(int p, int q, string parameter) =>
        Assert.Equal(parameter, Assert.Throws<ArgumentOutOfRangeException>(() => FractionalDivider.Of(p, q)).ParamName);

    private static (int Capacitors, int Switches) Counts(Fraction ratio) => $"{(ratio > 1 ? 1 / ratio : ratio)}" switch
    {
        "1" => (1, 2),
        "1/2" => (1, 4),
        "1/3" or "2/3" => (2, 7),
        "1/4" or "3/4" => (3, 8),
        _ => (3, 10),
    };
}
