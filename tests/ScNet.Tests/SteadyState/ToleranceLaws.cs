using CsCheck;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Tests.Networks;

namespace ScNet.Tests.SteadyState;

/// <summary>The worst case over tolerances against all corners and points inside, on random networks over twelve decades.</summary>
[Trait("Kind", "Law")]
public sealed class ToleranceLaws
{
    private const int LargestCornerCount = 1 << 10;
    private const int InnerCount = 100;

    [Fact]
    public void No_corner_and_no_point_inside_leaves_the_bound_and_no_corner_of_few_values_beats_what_is_found()
    {
        int compared = 0, corners = 0;
        Gen.Select(SpreadConverters.Gen, Gen.Double[0, 0.4].Array[3], Gen.Int[0, 1 << 20]).Holds(
            (sample, fraction, seed) =>
            {
                if (ModeAnalysis.Try(sample.Converter, sample.Converter.Modes[0]).Analysis is not { FastSwitchingLimit.Ohms: > 0 } analysis)
                {
                    return;
                }

                ComponentTolerances tolerances = new(fraction[0], fraction[1], fraction[2]);
                OutputImpedance impedance = OutputImpedance.Of(analysis);
                double frequencyHz = Math.Sqrt(sample.FrequencyOverCorner) * (impedance.CornerFrequencyHz > 0 ? impedance.CornerFrequencyHz : 1);
                ImpedanceWorstCase worst = ImpedanceTolerance.WorstCase(analysis, frequencyHz, tolerances);
                int[] free = Free(analysis);
                bool areFew = free.Length <= WorstCaseSearch.LargestExhaustedCount;
                Random random = new(seed);
                int cornerCount = (int)Math.Min(LargestCornerCount, Math.ScaleB(1, free.Length));
                for (int draw = 0; draw < cornerCount + InnerCount; draw++)
                {
                    bool isCorner = draw < cornerCount;
                    double ohms = Ohms(analysis, tolerances, frequencyHz, free, k => isCorner ? (((draw >> (k % 31)) & 1) * 2) - 1 : (2 * random.NextDouble()) - 1);
                    Assert.True(!worst.BoundOhms.IsDetermined || worst.BoundOhms.Contains(ohms), $"{ohms:R} Ω is not within {worst.BoundOhms} Ω");
                    Assert.True(
                        !areFew || !isCorner || (ohms >= worst.FoundOhms.Minimum!.Value * (1 - 1e-9) && ohms <= worst.FoundOhms.Maximum!.Value * (1 + 1e-9)),
                        $"{ohms:R} Ω is a corner beyond {worst.FoundOhms} Ω");
                }

                bool isKnown = analysis.Converter.Load == LoadKind.Stiff || analysis.Converter.Phases.Count == 2 || analysis.Topology.Directions.Count == 0;
                Assert.True(worst.BoundOhms.IsDetermined || !isKnown, $"{worst}");
                Assert.True(!worst.BoundOhms.IsDetermined || (worst.BoundOhms.Contains(worst.FoundOhms.Minimum!.Value) && worst.BoundOhms.Contains(worst.FoundOhms.Maximum!.Value)), $"{worst}");
                compared++;
                corners += cornerCount;
            },
            count: 40,
            print: c => $"{c}");
        Assert.True(compared >= LawCheck.Total(40) / 6 && corners > LawCheck.Total(40) * 16, $"only {compared} networks and {corners} corners");
    }

    [Fact]
    public void Relative_changes_of_all_values_add_up_to_no_more_than_the_bound_assumes()
    {
        int compared = 0;
        SpreadConverters.Gen.Holds(
            sample =>
            {
                if (ModeAnalysis.Try(sample.Converter, sample.Converter.Modes[0]).Analysis is not { FastSwitchingLimit.Ohms: > 0 } analysis)
                {
                    return;
                }

                OutputImpedance impedance = OutputImpedance.Of(analysis);
                double frequencyHz = sample.FrequencyOverCorner * (impedance.CornerFrequencyHz > 0 ? impedance.CornerFrequencyHz : 1);
                ImpedanceSensitivity slopes = ImpedanceSensitivity.Of(analysis, frequencyHz);
                Converter converter = analysis.Converter;
                double byResistance = converter.Switches.Select((s, k) => Math.Abs(slopes.ByOnResistance[k] * s.Ohms)).Sum()
                    + converter.Capacitors.Select((c, k) => Math.Abs(slopes.ByEsr[k] * c.EsrOhms)).Sum();
                Assert.True(byResistance <= slopes.Ohms * (1 + 1e-7), $"resistances: {byResistance / slopes.Ohms:R}");
                double byCapacitance = converter.Capacitors.Select((c, k) => Math.Abs(slopes.ByCapacitanceOhmsPerFarad[k] * c.Farads)).Sum();
                double skew = converter.Phases.Count == 2 ? 0 : 1 / Math.Tan(Math.PI / converter.Phases.Count);
                Assert.True(
                    converter.Load == LoadKind.Current || byCapacitance <= slopes.Ohms * ((17.0 / 8) + skew),
                    $"capacitances: {byCapacitance / slopes.Ohms:R}");
                compared++;
            },
            count: 600,
            print: s => s.ToString());
        Assert.True(compared > 100, $"only {compared}");
    }

    // The positions of the values that can move, as the deviations are numbered.
    private static int[] Free(ModeAnalysis analysis)
    {
        Converter converter = analysis.Converter;
        int capacitors = converter.Capacitors.Count, switches = converter.Switches.Count;
        return [
            .. Enumerable.Range(0, capacitors),
            .. Enumerable.Range(capacitors, switches).Where(s => analysis.Mode.ClosedPhases[s - capacitors].Count > 0),
            .. Enumerable.Range(capacitors + switches, capacitors).Where(i => converter.Capacitors[i - capacitors - switches].EsrOhms > 0),
        ];
    }

    private static double Ohms(ModeAnalysis analysis, ComponentTolerances tolerances, double frequencyHz, int[] free, Func<int, double> deviation)
    {
        var deviations = new double[(2 * analysis.Converter.Capacitors.Count) + analysis.Converter.Switches.Count];
        for (int k = 0; k < free.Length; k++)
        {
            deviations[free[k]] = deviation(k);
        }

        return PreparedMode.Of(tolerances.Apply(analysis.Converter, deviations), analysis.Topology).Ohms(1 / frequencyHz);
    }
}
