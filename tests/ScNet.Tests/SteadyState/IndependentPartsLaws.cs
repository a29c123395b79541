using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>A converter in independent parts has the figures of the whole, solved at once by dense rows, and of an integration.</summary>
[Trait("Kind", "Law")]
public sealed class IndependentPartsLaws
{
    private static readonly double[] s_timesCorner = [1e-3, 0.3, 1, 5, 1e3];

    [Fact]
    public void Impedances_of_parts_are_those_of_the_whole() => Check((analysis, whole, point) =>
    {
        foreach (double frequencyHz in s_timesCorner.Select(t => t * point.FrequencyHz))
        {
            double expected = whole.Kernel.Ohms(1 / frequencyHz), ohms = OutputImpedance.Of(analysis).Ohms(frequencyHz);
            Assert.Equal(expected, ohms, 1e-9 * expected);
        }
    });

    [Fact]
    public void Impedances_of_parts_are_those_of_an_integration() => Check(
        (analysis, _, point) =>
        {
            double expected = PeriodicOracle.Of(analysis).ByExponential(point.FrequencyHz);
            Assert.Equal(expected, OutputImpedance.Of(analysis).Ohms(point.FrequencyHz), 1e-7 * expected);
        },
        decades: 1,
        iterations: 150);

    [Fact]
    public void Currents_and_voltages_of_parts_are_those_of_the_whole() => Check((analysis, whole, point) =>
    {
        PeriodicSteadyState steady = PeriodicSteadyState.Of(analysis, point);
        PeriodicSolution dense = new(analysis.Converter.Network, whole, point, steady.AverageOutputVoltageVolts, share: 1);
        double largest = steady.Switches.Select(s => Math.Abs(s.PeakCurrentAmperes)).DefaultIfEmpty().Max();
        for (int s = 0; s < steady.Switches.Count; s++)
        {
            double square = 0;
            for (int j = 0; j < analysis.Converter.Phases.Count; j++)
            {
                square += whole.Flows.Position(j, s) is var position and >= 0 ? point.FrequencyHz * dense.ResistorCurrent(j, position).SquareIntegral() : 0;
            }

            Assert.Equal(Math.Sqrt(square), steady.Switches[s].RmsCurrentAmperes, 1e-7 * largest);
        }

        for (int c = 0; c < steady.Capacitors.Count; c++)
        {
            if (steady.Capacitors[c].AverageVoltageVolts is { } average)
            {
                double mean = Enumerable.Range(0, analysis.Converter.Phases.Count).Sum(j => dense.CapacitorVoltage(j, c).Mean() * whole.Duties[j]);
                Assert.Equal(mean, average, 1e-7 * point.InputVoltageVolts);
            }
        }

        Assert.Equal(steady.DissipationWatts, steady.Switches.Sum(s => s.DissipationWatts) + steady.Capacitors.Sum(c => c.DissipationWatts), 1e-8 * steady.DissipationWatts);
    });

    [Fact]
    public void Voltages_across_open_switches_and_potentials_of_parts_are_those_of_the_whole() => Check((analysis, whole, point) =>
    {
        PeriodicSteadyState steady = PeriodicSteadyState.Of(analysis, point);
        PeriodicSolution dense = new(analysis.Converter.Network, whole, point, steady.AverageOutputVoltageVolts, share: 1);
        double first = 0.3 * whole.Duties[0] / point.FrequencyHz;
        for (int s = 0; s < steady.Switches.Count; s++)
        {
            Switch own = analysis.Converter.Switches[s];
            if (steady.SampleSwitchVoltage(own.Name, [first])[0] is { } volts)
            {
                double expected = dense.Difference(0, analysis.Converter.Network.SwitchFirst[s], analysis.Converter.Network.SwitchSecond[s]).At(first);
                Assert.Equal(expected, volts, 1e-7 * point.InputVoltageVolts);
            }
        }

        for (int node = 0; node < analysis.Converter.Nodes.Count; node++)
        {
            if (steady.SampleNodePotential(analysis.Converter.Nodes[node], [first])[0] is { } volts)
            {
                Assert.Equal(dense.Difference(0, node, 0).At(first), volts, 1e-7 * point.InputVoltageVolts);
            }
        }
    });

    [Fact]
    public void Derivatives_of_parts_are_those_of_the_whole() => Check((analysis, whole, point) =>
    {
        Converter converter = analysis.Converter;
        ImpedanceSensitivity found = ImpedanceSensitivity.Of(analysis, point.FrequencyHz);
        PartSensitivity dense = new(converter, whole, 1 / point.FrequencyHz);
        double tolerance = 1e-8 * found.Ohms;
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            double ohms = converter.Switches[s].Ohms;
            Assert.Equal(ohms * dense.ByOnResistance(s), ohms * found.ByOnResistance[s], tolerance);
        }

        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            double farads = converter.Capacitors[c].Farads;
            Assert.Equal(farads * dense.ByCapacitance(c), farads * found.ByCapacitanceOhmsPerFarad[c], tolerance);
            Assert.Equal(dense.ByEsr(c) * converter.Capacitors[c].EsrOhms, found.ByEsr[c] * converter.Capacitors[c].EsrOhms, tolerance);
        }

        for (int j = 0; j < converter.Phases.Count; j++)
        {
            Assert.Equal(dense.ByDuty(j), found.ByDutyOhms[j + 1], tolerance);
        }

        Assert.Equal(-dense.ByPeriod() / point.FrequencyHz, found.ByFrequencyOhmsPerHertz * point.FrequencyHz, tolerance);
    });

    // A network two or three times over with values of their own, so that every copy has the ratio of the first.
    private static void Check(
        Action<ModeAnalysis, PreparedPart, OperatingPoint> law, double decades = 3, long iterations = 500, [System.Runtime.CompilerServices.CallerMemberName] string name = "")
    {
        int several = 0;
        LawSample.Check(
            (sketch, single) =>
            {
                if (sketch.Load != LoadKind.Stiff)
                {
                    return;
                }

                ModeAnalysis analysis = LawSample.Analyse(SideBySide(sketch, decades));
                IndependentParts places = analysis.Topology.PartsOf(analysis.Converter);
                double corner = OutputImpedance.Of(analysis).CornerFrequencyHz;
                if (places.Parts.Length > 1 && corner > 1e-9 && double.IsFinite(corner))
                {
                    several++;
                    law(analysis, Whole(analysis), new OperatingPoint(2, 0.5, corner));
                }
            },
            iterations: iterations,
            name: name);
        Assert.True(several >= iterations / 10, $"Only {several} of {iterations} networks fell into parts.");
    }

    private static PreparedPart Whole(ModeAnalysis analysis) => PreparedPart.Of(
        analysis.Converter,
        FullTopology.Of(analysis.Converter, analysis.Topology),
        [.. analysis.Converter.Phases.Select(p => p.Duty.ToDouble())],
        SteadyStateSize.Of(analysis.Converter, analysis.Topology, []));

    private static NetworkSketch SideBySide(NetworkSketch sketch, double decades)
    {
        Random random = new(sketch.Switches.Count + (31 * sketch.NodeCount) + (997 * sketch.Capacitors.Count));
        int copies = random.Next(2, 4), inner = sketch.NodeCount - 3;
        double Factor() => Math.Pow(10, (random.NextDouble() - 0.5) * decades);
        return sketch with
        {
            NodeCount = 3 + (copies * inner),
            Capacitors = [.. Enumerable.Range(0, copies).SelectMany(k => sketch.Capacitors.Select(c => c with
            {
                Positive = Place(c.Positive, k),
                Bottom = Place(c.Bottom, k),
                Farads = c.Farads * Factor(),
                EsrOhms = c.EsrOhms * Factor(),
            }))],
            Switches = [.. Enumerable.Range(0, copies).SelectMany(k => sketch.Switches.Select(s => s with
            {
                First = Place(s.First, k),
                Second = Place(s.Second, k),
                Ohms = s.Ohms * Factor(),
            }))],
        };

        int Place(int node, int copy) => node < 3 ? node : node + (copy * inner);
    }
}
