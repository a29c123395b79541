using Fractions;
using ScNet.Analysis;
using ScNet.Testing.Networks;

namespace ScNet.Tests.Analysis;

/// <summary>What fixes flying capacitors behind one inductor.</summary>
public class RippleBalanceTests
{
    private static readonly Fraction[] s_uneven = [new(1, 5), new(1, 10), new(1, 4), new(1, 10), new(3, 20), new(1, 5)];

    [Theory]
    [InlineData(2, 15)]
    [InlineData(1, 10)]
    [InlineData(3, 10)]
    public void Four_levels_are_balanced_by_ripple_at_two_thirds_and_one_third(int numerator, int denominator)
    {
        Fraction duty = new(numerator, denominator);
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.MultiLevel(4, duty).Build());
        Assert.Equal(VoltageBalance.Ripple, analysis.Balance);
        Assert.Equal(Quantity.Exact(duty), analysis.Ratio);
        Assert.Equal("2/3", analysis.Capacitors["fly1"].Voltage.ToString());
        Assert.Equal("1/3", analysis.Capacitors["fly2"].Voltage.ToString());
        Assert.All(analysis.Switches, s => Assert.Equal("1/3", QuantityArithmeticText(s.PeakBlocking)));
        Assert.Empty(analysis.Diagnostics);
        Assert.True(analysis.CarriesLoad);
        Assert.All(analysis.ChargeSharing!.Coefficients, k => Assert.Equal("0", k.ToString()));
    }

    [Fact]
    public void Lower_stress_balances_at_one_third_each()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.SeriesCharged(new Fraction(1, 5)).Build());
        Assert.Equal(VoltageBalance.Ripple, analysis.Balance);
        Assert.Equal("1/5", analysis.Ratio.ToString());
        Assert.Equal("1/3", analysis.Capacitors["fly1"].Voltage.ToString());
        Assert.Equal("1/3", analysis.Capacitors["fly2"].Voltage.ToString());
    }

    [Fact]
    public void Three_levels_are_left_to_losses()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.MultiLevel(3, new Fraction(1, 5)).Build());
        Assert.Equal(VoltageBalance.Losses, analysis.Balance);
        Assert.Equal("1/5", analysis.Ratio.ToString());
        Assert.Equal("?", analysis.Capacitors["fly1"].Voltage.ToString());
        Assert.Equal("[?, -1/5, ?, -1/5]", analysis.Inductors["coil"].Voltage.ToString());
        Diagnostic warning = Assert.Single(analysis.Diagnostics);
        Assert.Equal((DiagnosticCodes.BalancedByLosses, "fly1"), (warning.Code, Assert.Single(warning.Elements)));
    }

    [Fact]
    public void Uneven_intervals_shift_the_balance_and_leave_no_flow()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.MultiLevel(4, s_uneven, [[1], [], [2], [], [3], []]).Build());
        Assert.Equal(VoltageBalance.Ripple, analysis.Balance);
        Assert.Equal("5/8", analysis.Capacitors["fly1"].Voltage.ToString());
        Assert.Equal("7/16", analysis.Capacitors["fly2"].Voltage.ToString());
    }

    private static string QuantityArithmeticText(Quantity value) => value.Sign < 0 ? (-value).ToString() : value.ToString();
}
