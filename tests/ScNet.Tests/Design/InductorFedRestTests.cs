using Fractions;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Topologies;

namespace ScNet.Tests.Design;

/// <summary>A converter before an inductor with rests: derived in docs/theory/inductive-families.md.</summary>
public sealed class InductorFedRestTests
{
    public static TheoryData<int, int, int> Members => new()
    {
        { 2, 1, 2 }, { 3, 1, 3 }, { 4, 3, 7 }, { 5, 9, 10 },
    };

    [Theory]
    [MemberData(nameof(Members))]
    public void The_ratio_is_that_of_the_converter_times_the_duty_and_charge_balances(int levels, int numerator, int denominator)
    {
        Fraction duty = new(numerator, denominator);
        ModeAnalysis ladder = ModeAnalysis.Of(Ladder.StepDown(levels));
        ModeAnalysis fed = ModeAnalysis.Of(InductorFed.WithRests(Ladder.StepDown(levels), duty));
        Assert.Equal(duty / levels, fed.Ratio.ToFraction());
        Assert.True(fed.CarriesLoad);
        Assert.Equal(ladder.IdealPoint.CapacitorVoltages.Select(v => v.ToFraction()), fed.IdealPoint.CapacitorVoltages.Select(v => v.ToFraction()));

        // what the converter delivers in a phase and in the rest after it, together what it delivered
        PhaseValues coil = fed.Inductors["coil"].Charge;
        for (int phase = 1; phase <= 2; phase++)
        {
            Assert.Equal(ladder.ChargeFlow.Output[phase].ToFraction() * duty, coil[(2 * phase) - 1].ToFraction());
        }
    }

    [Fact]
    public void The_node_before_the_inductor_is_at_the_reference_in_every_rest()
    {
        Converter fed = InductorFed.WithRests(Dickson.StepDown(3), new Fraction(1, 4), restOhms: 0.5);
        Assert.Equal([2, 4], fed.Modes[0].ClosedPhases[fed.Switches.PositionOf("rest")]);
        Assert.Equal(0.5, fed.Switches["rest"].Ohms);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 1)]
    [InlineData(-1, 2)]
    public void A_duty_that_is_none_is_refused(int numerator, int denominator) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => InductorFed.WithRests(Ladder.StepDown(2), new Fraction(numerator, denominator)));
}
