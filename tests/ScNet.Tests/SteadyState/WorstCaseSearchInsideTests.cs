using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// A divider by two with further capacitors beside the flying one, each behind a resistance. Without the resistance both capacitors
/// serve, behind a large one the flying capacitor alone, and in between the resistance dissipates as well: the impedance is the
/// largest at several times the loop's ohms, and falls again beyond that, against the habit of resistances.
/// </summary>
public sealed class WorstCaseSearchInsideTests
{
    private const double LoopOhms = 1e5;
    private const double FlyFarads = 3e-6;
    private const double BesideFarads = 1e-6;
    private const double FrequencyHz = 1;

    /// <summary>
    /// Of fourteen resistances the search starts where all are at the same end. The slope of one of twenty loops leads to its other end.
    /// Of one of ten million loops the impedance hangs by some 0.13 loops over the resistance: three tenths of 1.3e-8 are less than a
    /// hundred millionth, and it stays where it is.
    /// </summary>
    [Theory]
    [InlineData(true, 1)]
    [InlineData(true, -1)]
    [InlineData(false, 1)]
    [InlineData(false, -1)]
    public void A_resistance_moves_by_its_share_of_the_impedance_whatever_its_ohms(bool isEsr, int direction)
    {
        const double Near = 20 * LoopOhms, Far = 1e7 * LoopOhms, Tolerance = 0.3;
        double usual = 1 + (direction * Tolerance), other = 1 - (direction * Tolerance);
        double expected = Ohms(Divider([other * Near, usual * Far], isEsr, inARow: 6, usual * LoopOhms));
        double found = WorstCaseSearch.Ohms(Divider([Near, Far], isEsr, inARow: 6), FrequencyHz, new(0, Tolerance, Tolerance), direction);
        Assert.Equal(expected, found, 1e-11 * expected);
    }

    /// <summary>
    /// A step must gain a millionth, which tolerances of a millionth do not: the corner that is tried decides. Eight resistances are few
    /// enough for all corners, which they are not together with three capacitances.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Capacitances_without_a_tolerance_do_not_count(int direction)
    {
        const double Near = 10 * LoopOhms, Far = 1e7 * LoopOhms, Tolerance = 1e-6;
        double usual = 1 + (direction * Tolerance), other = 1 - (direction * Tolerance);
        double expected = Ohms(Divider([other * Near, Far], isEsr: false, inARow: 3, usual * LoopOhms));
        double found = WorstCaseSearch.Ohms(Divider([Near, Far], isEsr: false, inARow: 3), FrequencyHz, new(0, Tolerance, 0), direction);
        Assert.Equal(expected, found, 1e-12 * expected);
    }

    /// <summary>
    /// From the worse end, some 500 loops, the impedance rises as the resistance falls, but at the other end, 2.5 loops, it is less again.
    /// So of every way half is gone: to 0, -1/2, -3/4 …, -31/32 after six steps, from which a seventh would lead on.
    /// </summary>
    [Fact]
    public void A_search_goes_on_step_by_step_and_ends_after_six()
    {
        const double Nominal = 250 * LoopOhms, Tolerance = 0.99;
        double[] ohms = [.. Enumerable.Range(0, 8).Select(k => OhmsAt(Nominal * (1 + (Tolerance * (Math.ScaleB(2, -k) - 1)))))];
        Assert.All(Enumerable.Range(1, 7), k => Assert.True(ohms[k] > ohms[k - 1] * (1 + 1e-6)));
        Assert.True(OhmsAt(Nominal * (1 - Tolerance)) < ohms[0]);
        Assert.Equal(ohms[6], WorstCaseSearch.Ohms(Divider([Nominal], isEsr: true), FrequencyHz, new(0, 0, Tolerance), 1), 1e-12 * ohms[6]);
    }

    /// <summary>From the worse end a sixteenth of the way to the other one would lead further; an eighth leads beyond the largest impedance to less.</summary>
    [Fact]
    public void Less_than_an_eighth_of_the_way_is_not_tried()
    {
        const double Nominal = 11.2 * LoopOhms, Tolerance = 0.5;
        double end = OhmsAt(Nominal * (1 - Tolerance));
        foreach (double share in (double[])[1, 0.5, 0.25, 0.125])
        {
            Assert.True(OhmsAt(Nominal * (1 - Tolerance + (2 * share * Tolerance))) < end);
        }

        Assert.True(OhmsAt(Nominal * (1 - Tolerance + (2.0 / 16 * Tolerance))) > end * (1 + 1e-6));
        Assert.Equal(end, WorstCaseSearch.Ohms(Divider([Nominal], isEsr: true), FrequencyHz, new(0, 0, Tolerance), 1), 1e-12 * end);
    }

    private static double OhmsAt(double besideOhms) => Ohms(Divider([besideOhms], isEsr: true));

    private static double Ohms(ModeAnalysis analysis) => OutputImpedance.Of(analysis).Ohms(FrequencyHz);

    // resistances as series resistances or as switches that never open; so many switches one after the other in each loop
    private static ModeAnalysis Divider(double[] besideOhms, bool isEsr, int inARow = 2, double loopOhms = LoopOhms)
    {
        ConverterBuilder builder = Converter.Create("half").Input("vin").Output("vout").Capacitor("fly", "p", "n", FlyFarads);
        for (int k = 0; k < besideOhms.Length; k++)
        {
            builder.Capacitor($"beside{k}", isEsr ? "p" : $"b{k}", "n", BesideFarads, isEsr ? besideOhms[k] : 0);
            if (!isEsr)
            {
                builder.Switch($"to{k}", "p", $"b{k}", on: [1, 2], besideOhms[k]);
            }
        }

        for (int k = 1; k < inARow; k++)
        {
            builder.Switch($"s1{k}", k == 1 ? "vin" : $"x1{k}", k == inARow - 1 ? "p" : $"x1{k + 1}", on: 1, loopOhms / inARow)
                .Switch($"s2{k}", k == 1 ? "vout" : $"x2{k}", k == inARow - 1 ? "p" : $"x2{k + 1}", on: 2, loopOhms / inARow);
        }

        Converter converter = builder.Switch("t1", "n", "vout", on: 1, loopOhms / inARow).Switch("t2", "n", "gnd", on: 2, loopOhms / inARow).Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }
}
