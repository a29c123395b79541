using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>A current that begins or stays at zero passes through nothing.</summary>
public sealed class CurrentsThroughZeroTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_current_passes_zero_only_to_the_other_sign(int sign)
    {
        // phase 2 ends half-way: the coil of 1 H rests up to the next period of 1 s, which begins with no current
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Duties(0.3, 0.7).Inductor("coil", "x", "vout", 1, 1e-9, untilZero: 2)
            .Switch("high", "vin", "x", on: 1, 1e-9).Switch("low", "x", Converter.ReferenceNode, on: 2, 1e-9).Build();
        ConductionNetwork network = ConductionNetwork.Of(stage, stage.Modes[0], sign * 10, [[], []], [false, true]);
        ConductionPeriod period = ConductionSolution.TryOf(network, [0.3, 0.7], [1], [0.5], sign * 10, sign * 0.2)!.Period;
        Assert.Equal(0, period.StartCurrent(0, 0));
        Assert.Equal(sign, Math.Sign(period.EndCurrent(0, 0)));
        Assert.Equal(0, period.EndCurrent(2, 0));
        Assert.All([false, true], mayTurn => Assert.False(period.PassesZero(0, 0, mayTurn)));

        // with p = 3 - 0.3 V at its peak the current brings 0.5 p - 0.06125 V = 0.2: at 6.15 V, where p of 1.15 A falls by 2.15 A
        Assert.Equal(-sign, Math.Sign(period.EndCurrent(1, 0)));
        Assert.All([false, true], mayTurn => Assert.True(period.PassesZero(1, 0, mayTurn)));
    }
}
