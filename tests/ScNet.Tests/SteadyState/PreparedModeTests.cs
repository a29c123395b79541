using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Two dividers by two on one stiff output, of C and loop resistance R, with coth(1/(4fRC))/(4fC) each (derived in
/// <see cref="OneCapacitorTests"/>), and a capacitor beside them that delivers nothing.
/// </summary>
public sealed class PreparedModeTests
{
    private const double FirstFarads = 1e-9;
    private const double SecondFarads = 3e-9;
    private const double FirstOhms = 4;
    private const double SecondOhms = 2;
    private const double Period = 3e-8;

    private static readonly double s_first = Closed(FirstFarads, FirstOhms);
    private static readonly double s_second = Closed(SecondFarads, SecondOhms);
    private static readonly double s_whole = 1 / ((1 / s_first) + (1 / s_second));

    private readonly Converter _converter = Beside().Build();

    [Fact]
    public void Conductances_to_the_load_add_up_and_the_load_divides_as_they_do()
    {
        PreparedMode prepared = Prepare();
        Assert.Equal(3, prepared.Parts.Length);
        Assert.Equal(s_whole, prepared.Ohms(Period), 1e-12 * s_whole);
        double[] shares = prepared.Shares(Period);
        Assert.Equal(s_whole / s_first, shares[prepared.Places.SwitchPlaces[0].Part], 1e-12);
        Assert.Equal(s_whole / s_second, shares[prepared.Places.SwitchPlaces[4].Part], 1e-12);
        Assert.Equal(0, shares[prepared.Places.CapacitorPlaces[2].Part]);
        Assert.Equal(new PortRatios(0.5, 0.5, 0), prepared.Ratios(Period));
    }

    [Fact]
    public void A_part_by_itself_has_the_whole_load()
    {
        Converter half = OperatedConverters.Half(farads: FirstFarads, ohms: FirstOhms / 2).Build();
        PreparedMode prepared = PreparedMode.Of(half, ModeAnalysis.Of(half, half.Modes[0]).Topology);
        Assert.Equal([1.0], prepared.Shares(Period));
        Assert.Equal(s_first, prepared.Ohms(Period), 1e-12 * s_first);
    }

    // λ times half the half period, of the faster part
    [Fact]
    public void The_largest_exponent_is_that_of_the_fastest_time_constant() =>
        Assert.Equal(0.25 * Period / (FirstFarads * FirstOhms), Prepare().LargestExponent(Period), 1e-12);

    // the square of a part's share times its own derivative: the whole is a sum of conductances
    [Fact]
    public void Derivatives_are_those_of_the_closed_form_times_squares_of_shares()
    {
        SensitivitySolution slopes = new(Prepare(), Period);
        Near(s_whole, slopes.Ohms);
        Assert.Equal(Period, slopes.Period);
        double first = Square(s_whole / s_first), second = Square(s_whole / s_second);
        (double FirstC, double FirstR, double FirstT) = Slopes(FirstFarads, FirstOhms);
        (double SecondC, double SecondR, double SecondT) = Slopes(SecondFarads, SecondOhms);
        Near(first * FirstC, slopes.ByCapacitance(0));
        Near(second * SecondC, slopes.ByCapacitance(1));
        Near(first * FirstR, slopes.ByEsr(0));
        Near(second * SecondR, slopes.ByEsr(1));
        Assert.All(Enumerable.Range(0, 4), s => Near(first * FirstR / 2, slopes.ByOnResistance(s)));
        Assert.All(Enumerable.Range(4, 4), s => Near(second * SecondR / 2, slopes.ByOnResistance(s)));
        Near((first * FirstT) + (second * SecondT), slopes.ByPeriod());

        Near(slopes.ByDuty(0), slopes.ByDuty(1));
        Assert.Equal((0, 0, 0), (slopes.ByCapacitance(2), slopes.ByEsr(2), slopes.ByOnResistance(8)));
    }

    // with a duty D_j for each phase the closed form is Σ_j coth(D_j T/(2RC)) T/(8C)
    [Fact]
    public void The_derivative_by_a_duty_is_that_of_the_hyperbolic_cotangent()
    {
        SensitivitySolution slopes = new(Prepare(), Period);
        double expected = (Square(s_whole / s_first) * ByDuty(FirstFarads, FirstOhms)) + (Square(s_whole / s_second) * ByDuty(SecondFarads, SecondOhms));
        Near(expected, slopes.ByDuty(0));

        static double ByDuty(double farads, double ohms) => -Square(Period / farads) / (16 * ohms * Square(Math.Sinh(Period / (4 * ohms * farads))));
    }

    // R = T coth(y)/(4C) with y = T/(4RC)
    private static (double ByFarads, double ByOhms, double ByPeriod) Slopes(double farads, double ohms)
    {
        double y = Period / (4 * ohms * farads), slow = Period / (4 * farads), coth = 1 / Math.Tanh(y), fall = y / Square(Math.Sinh(y));
        return (slow * (fall - coth) / farads, slow * fall / ohms, slow * (coth - fall) / Period);
    }

    private static double Closed(double farads, double ohms) => Period / (4 * farads) / Math.Tanh(Period / (4 * ohms * farads));

    private static double Square(double value) => value * value;

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-11 * Math.Abs(expected));

    private PreparedMode Prepare() => PreparedMode.Of(_converter, ModeAnalysis.Of(_converter, _converter.Modes[0]).Topology);

    private static ConverterBuilder Beside()
    {
        ConverterBuilder builder = Converter.Create("beside").Input("vin").Output("vout").Capacitor("fly1", "p1", "n1", FirstFarads).Capacitor("fly2", "p2", "n2", SecondFarads).Capacitor("idle", "q", "gnd", 1e-9);
        foreach ((int k, double ohms) in new[] { (1, FirstOhms / 2), (2, SecondOhms / 2) })
        {
            builder.Switch($"a{k}", "vin", $"p{k}", on: 1, ohms).Switch($"b{k}", $"n{k}", "vout", on: 1, ohms)
                .Switch($"c{k}", $"p{k}", "vout", on: 2, ohms).Switch($"d{k}", $"n{k}", "gnd", on: 2, ohms);
        }

        return builder.Switch("e", "q", "vout", on: 1);
    }
}
