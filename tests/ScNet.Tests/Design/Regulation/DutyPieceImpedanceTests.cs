using Fractions;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>The impedance of a piece of duties and its losses, by hand, and a stage that is refused.</summary>
public sealed class DutyPieceImpedanceTests
{
    private const double Hertz = 1e6;

    /// <summary>
    /// In phase 2 a capacitor is filled at once from the source, in phase 1 it feeds the coil. It gives D I/f each period, which costs half the square
    /// of it over C: D²/(2 C f). Its switch carries a = D in 1 - D: D²/(1 - D) of its resistance; the other two carry the coil's current, D and 1 - D of theirs.
    /// </summary>
    [Fact]
    public void A_capacitor_that_is_filled_at_once_counts_by_the_frequency()
    {
        const double Farads = 1e-6;
        DutyPiece piece = DutyPiece.Of(
            duty => ModelOf(Converter.Create("filled at once").Input("vin").Output("vout").Duties(duty, Fraction.One - duty)
                .Switch("in", "vin", "a", on: 2, ohms: 0.01).Capacitor("tank", "a", "gnd", Farads)
                .Switch("high", "a", "x", on: 1, ohms: 0.01).Switch("low", "x", "gnd", on: 2, ohms: 0.01)
                .Inductor("coil", "x", "vout", 1e-5, 0.02).Build()),
            0.2,
            0.6,
            Hertz);
        for (int k = 0; k < piece.Places.Length; k++)
        {
            double d = piece.Places[k], ohms = 0.02 + (0.01 * (1 + (d * d / (1 - d)))) + (d * d / (2 * Farads * Hertz));
            Assert.Equal(ohms, piece.OhmsAt(k, d), 1e-10);
            Assert.Equal((d * 5) - (ohms * 2), piece.VoltsAt(k, 5, 2), 1e-10);
        }
    }

    /// <summary>The ratio D is one polynomial for all duties, 1/D is not.</summary>
    [Fact]
    public void An_impedance_of_nanoohms_is_followed_as_closely_as_any_other()
    {
        DutyPiece piece = DutyPiece.Of(d => ModelOf(InductiveStage.StepDown(d, 1, 1e-9 / d.ToDouble())), 0.02, 0.95, Hertz);
        for (int k = 0; k + 1 < piece.Places.Length; k++)
        {
            double between = 0.5 * (piece.Places[k] + piece.Places[k + 1]);
            Assert.Equal(1, piece.OhmsAt(k, between) * between / 1e-9, 1e-9);
        }
    }

    [Fact]
    public void Losses_do_not_depend_on_what_stood_in_their_place()
    {
        DutyPiece piece = DutyPiece.Of(d => ModelOf(InductiveStage.StepUp(d, 2.2e-6, 0.05, 0.03)), 0.5, 0.6, Hertz);
        double[] onNone = new double[LossModel.KindCount], onOthers = new double[LossModel.KindCount];
        foreach (double duty in new[] { piece.Places[3], 0.5 * (piece.Places[3] + piece.Places[4]) })
        {
            Array.Clear(onNone);
            Array.Fill(onOthers, 1e6);
            piece.WattsAt(3, duty, 3, 1, Hertz, onNone);
            piece.WattsAt(3, duty, 3, 1, Hertz, onOthers);
            Assert.True(onNone.Sum() > 0);
            Assert.Equal(onNone, onOthers);
        }
    }

    /// <summary>Filled in an eighth of the period and emptied in three the capacitor carries no load, while its controller fixes its voltage and so the ratio.</summary>
    [Fact]
    public void A_stage_whose_ratio_is_known_and_that_carries_no_load_is_refused()
    {
        LossModel idle = ModelOf(InductorFed.WithRests(SeriesParallel.StepDown(2), new(1, 2)).WithDuties(new(1, 8), new(1, 4), new(3, 8), new(1, 4)));
        Assert.Equal((false, true), (idle.Analysis.CarriesLoad, idle.Analysis.Ratio.IsDetermined));
        Assert.Equal("stageAtDuty", Assert.Throws<ArgumentException>(() => DutyPiece.Of(_ => idle, 0.2, 0.4, Hertz)).ParamName);
    }

    private static LossModel ModelOf(Converter converter) => LossModel.Of(Sized.Of(converter, capacitor: Sized.BareCapacitor), ModeAnalysis.Of(converter));
}
