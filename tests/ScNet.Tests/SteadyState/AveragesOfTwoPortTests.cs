using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Two routes to one point: the exact periodic solution, as the period shrinks against every time constant, has the ratio,
/// the capacitor voltages and the fast limit that topology and straight-line ripple give.
/// </summary>
public class AveragesOfTwoPortTests
{
    private const double Hertz = 1e4;

    // The stages have 1 H, 1 F, 1 Ω: a period is a ten-thousandth of the time constants, and so is what it leaves.
    private const double Share = 2e-3;

    private static readonly ConverterBuilder[] s_balanced =
    [
        .. new Func<Fraction, LoadKind, ConverterBuilder>[]
        {
            InductiveStages.StepDown, InductiveStages.StepUp, InductiveStages.Inverting, InductiveStages.CapacitorCoupledInverting,
            InductiveStages.SinglePrimary, InductiveStages.ReversedSinglePrimary, InductiveStages.FourSwitch,
        }.Select(stage => stage(new Fraction(2, 5), LoadKind.Stiff)),
        InductiveStages.MultiLevel(4, new Fraction(1, 5)),
        InductiveStages.MultiLevel(6, new Fraction(1, 10)),
        InductiveStages.SeriesCharged(new Fraction(1, 5)),
    ];

    [Fact]
    public void Fast_periods_have_the_averages()
    {
        foreach (ConverterBuilder stage in s_balanced)
        {
            ModeAnalysis analysis = ModeAnalysis.Of(stage.Build());
            TwoPortPoint exact = AssertVoltages(analysis);
            Assert.Equal(analysis.FastSwitchingLimit.Ohms, exact.Ohms, Share * analysis.FastSwitchingLimit.Ohms);
            Assert.Equal(analysis.Ratio.ToDouble(), exact.CurrentRatio, Share * (1 + Math.Abs(exact.CurrentRatio)));
        }
    }

    [Fact]
    public void Uneven_intervals_have_the_shifted_balance() => AssertVoltages(ModeAnalysis.Of(InductiveStages.MultiLevel(
        4, [new(1, 5), new(1, 10), new(1, 4), new(1, 10), new(3, 20), new(1, 5)], [[1], [], [2], [], [3], []]).Build()));

    [Fact]
    public void What_five_levels_fix_by_ripple_is_so()
    {
        // the other two flying capacitors are left to losses
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.MultiLevel(5, new Fraction(1, 10)).Build());
        Assert.Equal(VoltageBalance.Losses, analysis.Balance);
        AssertVoltages(analysis);
    }

    private static TwoPortPoint AssertVoltages(ModeAnalysis analysis)
    {
        TwoPortPoint exact = SteadyStateModel.Of(analysis).TwoPort.At(Hertz);
        Assert.Equal(analysis.Ratio.ToDouble(), exact.Ratio, Share);
        foreach (CapacitorAnalysis capacitor in analysis.Capacitors.Where(c => c.Voltage.IsDetermined))
        {
            Assert.Equal(capacitor.Voltage.ToDouble(), exact.CapacitorVoltages[capacitor.Capacitor.Name]!.Value, Share);
        }

        return exact;
    }
}
