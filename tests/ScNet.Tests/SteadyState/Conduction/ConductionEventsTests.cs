using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Which currents end a phase: small ones and ringing ones, and what is refused before any is looked for.</summary>
public sealed class ConductionEventsTests
{
    private const double Frequency = 1e6;

    [Fact]
    public void A_millionth_of_all_voltages_and_currents_ends_at_the_same_time()
    {
        ConductionModel model = ConductionModel.Of(Stages.StepDown(new(3, 10), 0.01));
        ConductionPoint large = model.At(new(10, 0.1, Frequency)), small = model.At(new(1e-5, 1e-7, Frequency));
        Assert.True(small.IsDiscontinuous);
        Assert.Equal(large.ConductingShares[1], small.ConductingShares[1], 1e-12);
    }

    /// <summary>
    /// 1 µH and 2 nF ring at some 0.28 µs. Phase 2 of eight lengths about four to five of these, at whose end the current is
    /// positive in some: it ends at its first zero, before a whole wave is over.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_ringing_current_ends_at_its_first_zero_whatever_it_is_at_the_end_of_the_phase(bool isUp)
    {
        const double Ring = 2.80993e-7;
        for (int k = 0; k < 8; k++)
        {
            double on = 3e-8, seconds = on + ((4 + (k / 8.0)) * Ring);
            Fractions.Fraction duty = Fractions.Fraction.FromDoubleRounded(on / seconds);
            Converter stage = isUp ? Stages.StepUp(duty, 0.01, LoadKind.Current, 2e-9) : Stages.StepDown(duty, 0.01, LoadKind.Current, 2e-9);
            ConductionPoint point = ConductionModel.Of(stage).At(new(10, 0.01, 1 / seconds));
            Assert.True(point.IsDiscontinuous);
            double end = (duty.ToDouble() + point.ConductingShares[1]) * seconds;
            Assert.InRange(point.ConductingShares[1] * seconds, 1e-9, Ring);
            Assert.All(point.Steady.SampleInductorCurrent("coil", [.. Enumerable.Range(1, 49).Select(n => n * end / 50)]), i => Assert.True(i > 0));
            Assert.Equal(0, point.Steady.SampleInductorCurrent("coil", [end])[0], 1e-9);
        }
    }

    [Fact]
    public void What_cannot_be_connected_is_refused_for_its_phase()
    {
        Assert.Equal(("The load's current has no path in phase 1. Put a capacitor across the output.", 1), Refusal(2));
        Assert.Equal(("The load's current has no path in phase 2. Put a capacitor across the output.", 2), Refusal(1));

        // through a capacitor no steady current flows, whatever the phase
        Converter blocked = Converter.Create("blocked").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("series", "a", "vout", 1e-6).Switch("s", "vin", "a", on: [1, 2]).Build();
        Assert.Equal(("No steady current can reach the load: over a period it would charge a capacitor in one direction only.", null), Refusal(blocked));
    }

    private static (string Message, int? Phase) Refusal(int on) => Refusal(
        Converter.Create("now and then").Input("vin").Output("vout", LoadKind.Current).Switch("s", "vin", "vout", on: on).Build());

    private static (string Message, int? Phase) Refusal(Converter converter)
    {
        Diagnostic diagnostic = Assert.Single(Assert.Throws<ScNetException>(() => ConductionModel.Of(converter).At(new(10, 0.2, Frequency))).Diagnostics);
        return (diagnostic.Message, diagnostic.Phase);
    }
}
