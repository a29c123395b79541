using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Errors of figures from those of the charges of a period.</summary>
public sealed class TwoPortErrorsTests
{
    [Fact]
    public void With_a_load_current_they_are_those_of_averages()
    {
        PeriodError error = new(0, 2, 0);
        (error.Output[0], error.Output[1], error.InputCharge[0], error.InputCharge[1]) = (1, 2, 3, 5);
        Assert.Equal(new TwoPortErrors(Ratio: 4, Ohms: 8, CurrentRatio: 20, InputSiemens: 12), TwoPortErrors.Of(error, 4));
    }

    /// <summary>
    /// M = −α/β, R = −1/β and N = −δ R with errors a, b and d of α, β and δ: |R|(a + |M| b), R² b and |R|(d + |N| b); of
    /// G = γ + δ M that of γ, and |N/R| of M's with |M/R| of N's.
    /// </summary>
    [Fact]
    public void With_a_stiff_output_they_are_those_of_quotients()
    {
        TwoPortErrors averages = new(Ratio: 5, Ohms: 7, CurrentRatio: 11, InputSiemens: 13);
        TwoPortErrors found = averages.OfStiff(ratio: -2, ohms: -4, currentRatio: -3);

        // 4 (5 + 14) = 76, 16 · 7, 4 (11 + 21) = 128 and 13 + (2 · 128 + 3 · 76)/4
        Assert.Equal(new TwoPortErrors(76, 112, 128, 134), found);
        Assert.Equal(found, averages.OfStiff(2, 4, 3));
    }
}
