using CsCheck;
using Fractions;
using ScNet.Analysis;
using ScNet.Design.Regulation;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>The prepared inverse of the impedance against bisection on the exact one.</summary>
[Trait("Kind", "Law")]
public sealed class FrequencyOfImpedanceTests
{
    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void The_frequency_found_has_the_impedance_wanted_and_no_lower_one_does(LoadKind load) => Gen
        .Select(ConsistentNetworks.Gen(load, largestCapacitorCount: 4), Gen.Double[0.001, 0.999])
        .Holds(
            sample =>
            {
                Converter converter = sample.Item1.Converter;
                if (ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is not { } analysis || !(OutputImpedance.Of(analysis).CornerFrequencyHz is > 1e-9 and < 1e9))
                {
                    return;
                }

                OutputImpedance impedance = OutputImpedance.Of(analysis);
                double corner = impedance.CornerFrequencyHz, floor = corner / 100, ceiling = 10 * corner;
                double atFloor = impedance.Ohms(floor), atCeiling = impedance.Ohms(ceiling);
                double wanted = atFloor * Math.Pow(atCeiling / atFloor, sample.Item2);
                FrequencyOfImpedance frequency = FrequencyOfImpedance.Of(impedance, new(floor, ceiling));
                double found = frequency.HertzAt(wanted);
                Assert.Equal(1, impedance.Ohms(found) / wanted, 1e-11);
                if (converter.Phases.Count == 2)
                {
                    double bisected = Bisected(impedance, floor, ceiling, wanted), slope = Math.Log(impedance.Ohms(found * 1.001) / impedance.Ohms(found)) / 0.001;
                    Assert.Equal(0, Math.Log(found / bisected) * slope, 1e-11);
                }
            },
            count: 200);

    [Fact]
    public void It_falls_with_frequency_and_no_faster_than_by_one_over_it() => Gen
        .Select(ConsistentNetworks.Gen(LoadKind.Stiff, largestCapacitorCount: 4, largestPhaseCount: 2), Gen.Double[-2, 2])
        .Holds(
            sample =>
            {
                Converter converter = sample.Item1.Converter;
                if (ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is { } analysis && OutputImpedance.Of(analysis) is { CornerFrequencyHz: > 1e-9 and < 1e9 } impedance)
                {
                    double hertz = impedance.CornerFrequencyHz * Math.Pow(10, sample.Item2);
                    Assert.InRange(impedance.Ohms(hertz * 1.5) / impedance.Ohms(hertz), (1 / 1.5) - 1e-12, 1 + 1e-12);
                }
            },
            count: 200);

    [Fact]
    public void Beyond_the_ceiling_it_is_the_ceiling_and_below_the_floor_it_is_the_floor()
    {
        OutputImpedance impedance = OutputImpedance.Of(ModeAnalysis.Of(Ladder.StepDown(3, 1e-9, 2)));
        FrequencyOfImpedance frequency = FrequencyOfImpedance.Of(impedance, new(1e5, 1e7));
        Assert.Equal(1e7, frequency.HertzAt(impedance.Ohms(1.001e7)));
        Assert.True(frequency.LeastOhms > impedance.Ohms(1.001e7));
        Assert.Equal(1e5, frequency.HertzAt(impedance.Ohms(9e4)));
        Assert.Equal(1e7, frequency.HertzAt(frequency.LeastOhms), 1e-3);
        Assert.Equal(1e5, frequency.HertzAt(frequency.OhmsAtFloor), 1e-5);
    }

    [Theory]
    [InlineData(3e5)]
    [InlineData(2e7)]
    [InlineData(5e8)]
    public void Cycles_left_out_raise_the_impedance_as_an_idle_phase_with_all_switches_open_does(double floorHz)
    {
        // the same phases, as long as at the floor, then five times as long nothing
        Converter running = SeriesParallel.StepDown(3, 1e-9, 2);
        ConverterBuilder builder = Converter.Create("with rest").Input(running.InputNode).Output(running.OutputNode)
            .Duties(new Fraction(1, 12), new Fraction(1, 12), new Fraction(5, 6));
        foreach (Capacitor c in running.Capacitors)
        {
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode, c.Farads);
        }

        foreach (Switch s in running.Switches)
        {
            builder.Switch(s.Name, s.FirstNode, s.SecondNode, running.Modes[0].ClosedPhases[running.Switches.PositionOf(s.Name)], s.Ohms);
        }

        Converter resting = builder.Build();
        double atFloor = OutputImpedance.Of(ModeAnalysis.Of(running)).Ohms(floorHz);
        Assert.Equal(6, OutputImpedance.Of(ModeAnalysis.Of(resting)).Ohms(floorHz / 6) / atFloor, 1e-12);
    }

    private static double Bisected(OutputImpedance impedance, double floor, double ceiling, double wanted)
    {
        double low = floor, high = ceiling;
        for (int step = 0; step < 200 && high / low > 1 + 1e-15; step++)
        {
            double middle = Math.Sqrt(low * high);
            (low, high) = impedance.Ohms(middle) > wanted ? (middle, high) : (low, middle);
        }

        return high;
    }
}
