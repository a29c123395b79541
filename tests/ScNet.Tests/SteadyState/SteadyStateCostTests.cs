using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>What may be computed, and what is said where it may not.</summary>
public sealed class SteadyStateCostTests
{
    [Fact]
    public void Costs_add_up_step_by_step_and_number_by_number() => Assert.Equal(new SteadyStateCost(5, 11), new SteadyStateCost(2, 4) + new SteadyStateCost(3, 7));

    [Theory]
    [InlineData(4e10, 2.5e8, false)]
    [InlineData(4.01e10, 0, true)]
    [InlineData(0, 2.51e8, true)]
    [InlineData(5e10, 3e8, true)]
    public void Either_too_many_steps_or_too_many_numbers_are_too_large(double steps, double numbers, bool isTooLarge)
    {
        SteadyStateCost cost = new(steps, numbers);
        Assert.Equal(isTooLarge, cost.IsTooLarge);
        Assert.Equal(isTooLarge, Record.Exception(() => Size().Require(cost)) is ScNetException);
    }

    // two capacitors have a series resistance, and the phases close one, three and two switches; a double takes eight bytes
    [Theory]
    [InlineData(5e10, 1, "5E+10 multiplications, and at most 4E+10 are allowed")]
    [InlineData(5e10, 3e8, "5E+10 multiplications, and at most 4E+10 are allowed")]
    [InlineData(4e10, 3e8, "2.4E+9 bytes, and at most 2E+9 are allowed")]
    [InlineData(1, 6.25e8, "5E+9 bytes, and at most 2E+9 are allowed")]
    public void The_refusal_says_how_large_the_network_is_and_what_it_would_take(double steps, double numbers, string excess)
    {
        Diagnostic finding = Assert.Single(Assert.Throws<ScNetException>(() => Size().Require(new SteadyStateCost(steps, numbers))).Diagnostics);
        Assert.StartsWith(
            $"The exact steady state of 3 phases with up to 5 resistances, 3 capacitors and 1 free direction would take {excess}. ", finding.Message, StringComparison.Ordinal);
        Assert.Equal(DiagnosticCodes.SteadyStateTooLarge, finding.Code);
    }

    private static SteadyStateSize Size()
    {
        Converter converter = Converter.Create("half").Input("vin").Output("vout").Phases(3)
            .Capacitor("fly", "p", "n", 1, esrOhms: 1).Capacitor("idle", "q", "gnd").Capacitor("out", "vout", "gnd", 1, esrOhms: 1)
            .Switch("s1", "vin", "p", on: 2).Switch("s2", "n", "vout", on: 2).Switch("s3", "p", "vout", on: 3).Switch("s4", "n", "gnd", on: 3)
            .Switch("s5", "q", "gnd", on: [1, 2]).Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        return SteadyStateSize.Of(converter, analysis.Topology, []);
    }
}
