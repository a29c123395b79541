using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Where the bounds of docs/theory/tolerances.md hold, by what decides the flow of charge.</summary>
public sealed class ImpedanceBoundOfFlowsTests
{
    /// <summary>With one flying capacitor and no tolerances both bounds are the impedance itself; a hundred thousand millionth is left for rounding.</summary>
    [Theory]
    [InlineData(0.01)]
    [InlineData(1)]
    [InlineData(100)]
    public void A_bound_leaves_room_for_rounding(double frequencyHz)
    {
        ModeAnalysis analysis = Of(OperatedConverters.Half());
        Interval<double> bound = ImpedanceBound.Of(analysis, frequencyHz, new());
        double ohms = OutputImpedance.Of(analysis).Ohms(frequencyHz);
        Assert.InRange(bound.Minimum!.Value, ohms * (1 - 1.1e-11), ohms * (1 - 0.9e-11));
        Assert.InRange(bound.Maximum!.Value, ohms * (1 + 0.9e-11), ohms * (1 + 1.1e-11));
    }

    /// <summary>
    /// Capacitors C in series in phase 1, each on its own to the output in phase 2 and 3: a third of the charge passes each, whatever the
    /// values. With loops of R1, R2 and R3 phases of a third of a period make (2 coth(1/(3 f R1 C)) + coth(1/(6 f R2 C)) + coth(1/(6 f R3 C)))/(18 f C).
    /// The loop of R3 is so fast that one flow at the worst values, as slow as the fastest, is no good bound.
    /// </summary>
    [Fact]
    public void With_three_phases_and_one_flow_capacitances_move_no_more_than_with_two()
    {
        const double TC = 0.02, TR = 0.05;
        Interval<double> bound = ImpedanceBound.Of(Of(SeriesParallel()), 1, new(TC, TR));
        double farads = Math.Sqrt(1 - (TC * TC)), ratio = farads * Math.Sqrt(1 - (TR * TR));
        double middle = ((2 * Coth(2 / ratio)) + Coth(1 / ratio) + Coth(100 / ratio)) / (18 * farads);
        double expected = middle * Math.Exp(Math.Atanh(TR) + (17.0 / 8 * Math.Atanh(TC)));
        Assert.Equal(expected, bound.Maximum!.Value, 3e-11 * expected);
    }

    /// <summary>With a current load, three phases and parallel ways no bound is known where capacitances have a tolerance; here there are none that have.</summary>
    [Fact]
    public void Without_capacitors_a_current_load_has_a_bound()
    {
        Interval<double> bound = ImpedanceBound.Of(
            Of(Converter.Create("resistors").Input("vin").Output("vout", LoadKind.Current).Phases(3)
                .Switch("s1", "vin", "vout", on: [1, 2, 3], ohms: 3).Switch("s2", "vin", "vout", on: [1, 2, 3], ohms: 6)),
            1,
            new(capacitance: 0.2, onResistance: 0.3));

        // 3 and 6 ohms are 2 ohms in parallel
        Assert.Equal(1.4, bound.Minimum!.Value, 3e-11);
        Assert.True(bound.Maximum!.Value >= 2.6);
    }

    private static double Coth(double x) => 1 / Math.Tanh(x);

    // R1 = R2 = 1/6 and R3 = 1/600 with C = 1
    private static ConverterBuilder SeriesParallel() => Converter.Create("series-parallel").Input("vin").Output("vout").Phases(3)
        .Capacitor("first", "p", "n").Capacitor("second", "q", "m")
        .Switch("s1", "vin", "p", on: 1, ohms: 1.0 / 18).Switch("s2", "n", "q", on: 1, ohms: 1.0 / 18).Switch("s3", "m", "vout", on: 1, ohms: 1.0 / 18)
        .Switch("s4", "p", "vout", on: 2, ohms: 1.0 / 12).Switch("s5", "n", Converter.ReferenceNode, on: 2, ohms: 1.0 / 12)
        .Switch("s6", "q", "vout", on: 3, ohms: 1.0 / 1200).Switch("s7", "m", Converter.ReferenceNode, on: 3, ohms: 1.0 / 1200);

    private static ModeAnalysis Of(ConverterBuilder builder)
    {
        Converter converter = builder.Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }
}
