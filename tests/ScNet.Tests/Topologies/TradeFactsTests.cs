using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

/// <summary>What every practitioner knows; common practice, no source.</summary>
public sealed class TradeFactsTests
{
    [Fact]
    public void A_two_to_one_divider_halves_the_voltage_and_doubles_the_charge()
    {
        ModeAnalysis analysis = FamilyTests.Analyse(Converter.Create("Divider")
            .Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Build());
        Assert.Equal(Quantity.Exact(1, 2), analysis.Ratio);
        Assert.Equal([Quantity.Exact(1, 2), 0], analysis.ChargeFlow.Input);
        Assert.Equal([Quantity.Exact(1, 2), Quantity.Exact(1, 2)], analysis.ChargeFlow.Output);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(8)]
    public void In_a_stack_of_n_each_device_sees_one_nth_of_the_input(int n)
    {
        Converter ladder = Ladder.StepDown(n);
        ModeAnalysis analysis = FamilyTests.Analyse(ladder);
        Assert.All(analysis.BlockingVoltages.Peaks, peak => Assert.Equal(Quantity.Exact(1, n), peak));
        Assert.All(analysis.IdealPoint.CapacitorVoltages, voltage => Assert.Equal(Quantity.Exact(1, n), voltage));
    }

    [Fact]
    public void The_best_a_linear_regulator_can_do_from_4_2_to_0_8_volts_is_19_percent()
    {
        // A regulator passes its charge straight through: the efficiency is output over input voltage.
        ModeAnalysis pass = FamilyTests.Analyse(Converter.Create("Pass device")
            .Input("vin").Output("vout")
            .Switch("pass", "vin", "vout", on: [1, 2])
            .Build());
        Assert.Equal(19, Math.Floor(100 * Efficiency(pass, inputVolts: 4.2, outputVolts: 0.8)));

        // The same step behind an ideal four-to-one converter, for the contrast.
        Assert.Equal(76, Math.Floor(100 * Efficiency(FamilyTests.Analyse(Dickson.StepDown(4)), 4.2, 0.8)));
    }

    private static double Efficiency(ModeAnalysis analysis, double inputVolts, double outputVolts)
    {
        double inputCharge = analysis.ChargeFlow.Input.Sum(q => q.ToDouble());
        return outputVolts / (inputVolts * inputCharge);
    }
}
