using Fractions;
using ScNet.Analysis;

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

        // 0.2 of 3/8, 0.25 of 3/16 and 0.15 of 7/16 of the input
        Assert.Equal("3/16", analysis.Ratio.ToString());
        Assert.False(analysis.CarriesLoad);
        Diagnostic warning = Assert.Single(analysis.Diagnostics);
        Assert.Equal((DiagnosticSeverity.Warning, DiagnosticCodes.LoadMovesVoltages), (warning.Severity, warning.Code));
        Assert.Equal(["fly1", "fly2"], warning.Elements);
        Assert.All(analysis.ChargeFlow.Switches, charges => Assert.All(charges, q => Assert.False(q.IsDetermined)));
        Assert.False(analysis.Inductors["coil"].Current.IsDetermined);
        Assert.True(double.IsPositiveInfinity(analysis.FastSwitchingLimit.Ohms));
        Assert.True(double.IsPositiveInfinity(analysis.SlowSwitchingLimit.OhmsAtOneHertz));
        Assert.Null(analysis.ChargeSharing);
    }

    [Fact]
    public void Six_levels_balance_at_fifths()
    {
        // common practice, no source: the nominal voltages of an n-level stage are multiples of the input over n - 1
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.MultiLevel(6, new Fraction(1, 10)).Build());
        Assert.Equal(VoltageBalance.Ripple, analysis.Balance);
        Assert.Equal(["4/5", "3/5", "2/5", "1/5"], analysis.Capacitors.Select(c => c.Voltage.ToString()));
    }

    [Fact]
    public void Five_levels_leave_one_movement_to_losses_and_fix_what_it_does_not_move()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.MultiLevel(5, new Fraction(1, 10)).Build());
        Assert.Equal(VoltageBalance.Losses, analysis.Balance);
        Assert.Equal("1/10", analysis.Ratio.ToString());
        Assert.Equal(["?", "1/2", "?"], analysis.Capacitors.Select(c => c.Voltage.ToString()));
    }

    [Fact]
    public void The_balance_is_one_of_charge()
    {
        // the net charge of each flying capacitor by sampled straight lines of current, at the voltages that the library gives
        Converter converter = InductiveStages.MultiLevel(4, s_uneven, [[1], [], [2], [], [3], []]).Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        double current = 0;
        double[] charge = new double[2];
        double average = 0;
        const int steps = 1000;
        for (int pass = 0; pass < 2; pass++)
        {
            foreach (Phase phase in converter.Phases)
            {
                double duty = phase.Duty.ToDouble(), volts = analysis.Inductors["coil"].Voltage[phase.Number].ToDouble();
                for (int k = 0; k < steps; k++)
                {
                    double middle = current + (0.5 * volts * duty / steps);
                    average += pass == 0 ? middle * duty / steps : 0;
                    for (int c = 0; c < 2; c++)
                    {
                        // pair c + 1 closed above charges the capacitor, pair c + 2 discharges it
                        int sign = phase.Number == (2 * c) + 1 ? 1 : phase.Number == (2 * c) + 3 ? -1 : 0;
                        charge[c] += pass == 1 ? sign * (middle - average) * duty / steps : 0;
                    }

                    current += volts * duty / steps;
                }
            }
        }

        // without load the coil's current has no mean, and then nothing is left on either capacitor
        Assert.Equal(0, current, 1e-12);
        Assert.Equal(0, charge[0], 1e-12);
        Assert.Equal(0, charge[1], 1e-12);
    }

    [Fact]
    public void Inductances_count_by_their_proportion_only()
    {
        Converter one = TwoCoils(1, 3), other = TwoCoils(1e-6, 3e-6), equal = TwoCoils(2, 2);
        Quantity[] voltages = [.. ModeAnalysis.Of(one).Capacitors.Select(c => c.Voltage)];
        Assert.Equal(voltages, ModeAnalysis.Of(other).Capacitors.Select(c => c.Voltage));

        // other values are settled anew
        ModeAnalysis revalued = ModeAnalysis.Of(one).WithValuesOf(one.WithValues(henries: [2, 2]));
        Assert.Equal(ModeAnalysis.Of(equal).Capacitors.Select(c => c.Voltage), revalued.Capacitors.Select(c => c.Voltage));
    }

    // four levels with the coil split in two
    private static Converter TwoCoils(double first, double second)
    {
        Converter whole = InductiveStages.MultiLevel(4, s_uneven, [[1], [], [2], [], [3], []]).Build();
        ConverterBuilder builder = Converter.Create("split").Input("vin").Output("vout").Duties(s_uneven);
        foreach (Switch s in whole.Switches)
        {
            builder.Switch(s.Name, s.FirstNode, s.SecondNode, whole.Modes[0].ClosedPhases[whole.Switches.PositionOf(s.Name)]);
        }

        foreach (Capacitor c in whole.Capacitors)
        {
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode);
        }

        return builder.Inductor("a", "x", "m", henries: first).Inductor("b", "m", "vout", henries: second).Build();
    }

    private static string QuantityArithmeticText(Quantity value) => value.Sign < 0 ? (-value).ToString() : value.ToString();
}
