using ScNet.Design.Losses;

namespace ScNet.Tests.Design.Losses;

public sealed class LossPolynomialTests
{
    private static readonly LossPolynomial s_all = new()
    {
        Current2 = 2,
        CurrentVoltsPerHertz = 3,
        Volts2PerHertz2 = 5,
        Hertz = 7,
        HertzVolts = 11,
        HertzVolts2 = 13,
        Volts = 17,
        Volts2 = 19,
        Constant = 23,
    };

    // at 2 V, 3 A and 4 Hz
    [Fact]
    public void Every_coefficient_goes_with_its_own_powers()
    {
        Assert.Equal(2 * 9, At(new() { Current2 = 2 }));
        Assert.Equal(3 * 3 * 2 / 4.0, At(new() { CurrentVoltsPerHertz = 3 }));
        Assert.Equal(5 * 4 / 16.0, At(new() { Volts2PerHertz2 = 5 }));
        Assert.Equal(7 * 4, At(new() { Hertz = 7 }));
        Assert.Equal(11 * 4 * 2, At(new() { HertzVolts = 11 }));
        Assert.Equal(13 * 4 * 4, At(new() { HertzVolts2 = 13 }));
        Assert.Equal(17 * 2, At(new() { Volts = 17 }));
        Assert.Equal(19 * 4, At(new() { Volts2 = 19 }));
        Assert.Equal(23, At(new() { Constant = 23 }));
        Assert.Equal(18 + 4.5 + 1.25 + 28 + 88 + 208 + 34 + 76 + 23, At(s_all));

        static double At(LossPolynomial watts) => watts.At(2, 3, 4);
    }

    [Fact]
    public void A_sum_adds_coefficient_by_coefficient()
    {
        LossPolynomial other = new()
        {
            Current2 = 100,
            CurrentVoltsPerHertz = 200,
            Volts2PerHertz2 = 300,
            Hertz = 400,
            HertzVolts = 500,
            HertzVolts2 = 600,
            Volts = 700,
            Volts2 = 800,
            Constant = 900,
        };
        LossPolynomial expected = new()
        {
            Current2 = 102,
            CurrentVoltsPerHertz = 203,
            Volts2PerHertz2 = 305,
            Hertz = 407,
            HertzVolts = 511,
            HertzVolts2 = 613,
            Volts = 717,
            Volts2 = 819,
            Constant = 923,
        };
        Assert.Equal(expected, s_all + other);
    }

    [Fact]
    public void So_many_times_the_same_multiplies_every_coefficient()
    {
        Assert.Equal(s_all + s_all + s_all, s_all.Times(3));
        Assert.Equal(3 * s_all.At(2, 3, 4), s_all.Times(3).At(2, 3, 4));
    }

    [Fact]
    public void Only_the_polynomial_without_coefficients_is_zero()
    {
        Assert.True(default(LossPolynomial).IsZero);
        Assert.False(s_all.IsZero);
        Assert.False(new LossPolynomial { Constant = 1e-300 }.IsZero);
    }
}
