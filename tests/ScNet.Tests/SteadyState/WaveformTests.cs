using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Sampled waveforms against the nodal equations integrated by matrix exponentials.</summary>
public sealed class WaveformTests
{
    private const double Tolerance = 1e-6;
    private const double InputVolts = 3.6;
    private const double LoadAmperes = 0.11;

    // of the period, none of them on a boundary of phases
    private static readonly double[] s_instants = [.. Enumerable.Range(0, 61).Select(i => (i + 0.37) / 61)];

    public static TheoryData<string, double> Cases
    {
        get
        {
            TheoryData<string, double> cases = [];
            foreach (string name in OperatedConverters.All.Keys)
            {
                cases.Add(name, 0.05);
                cases.Add(name, 0.4);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Waveforms_agree_with_the_nodal_equations(string name, double frequencyHz)
    {
        Converter converter = OperatedConverters.All[name]();
        Mode mode = converter.Modes[0];
        PeriodicSteadyState steady = PeriodicSteadyState.Of(
            ModeAnalysis.Of(converter, mode), new OperatingPoint(InputVolts, LoadAmperes, frequencyHz));
        NodalWaveforms nodal = NodalWaveforms.Of(converter, mode, InputVolts, LoadAmperes, frequencyHz);
        double[] times = [.. s_instants.Select(t => t / frequencyHz)];
        Assert.Equal(nodal.MeanPotential(converter.OutputNode), steady.AverageOutputVoltageVolts, Tolerance);
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            int index = i;
            string capacitor = converter.Capacitors[i].Name;
            AssertSame(times, steady.CapacitorVoltage(capacitor, times), t => nodal.CapacitorVoltage(index, t), $"voltage of {capacitor}");
            AssertSame(times, steady.SampleCapacitorCurrent(capacitor, times), t => nodal.CapacitorCurrent(index, t), $"current of {capacitor}");
        }

        for (int i = 0; i < converter.Switches.Count; i++)
        {
            int index = i;
            string @switch = converter.Switches[i].Name;
            AssertSame(times, steady.SampleSwitchCurrent(@switch, times), t => nodal.SwitchCurrent(mode, index, t), $"current of {@switch}");
        }

        foreach (string node in converter.Nodes)
        {
            double?[] potentials = steady.SampleNodePotential(node, times);
            double[] held = [.. times.Where((_, k) => potentials[k] is not null)];
            AssertSame(held, [.. potentials.OfType<double>()], t => nodal.Potential(node, t), $"potential of {node}");
            Assert.Equal(times.Where(t => Hangs(converter, mode, node, t * frequencyHz)), held);
        }
    }

    [Fact]
    public void The_integrator_itself_gives_the_textbook_waveform_of_one_capacitor()
    {
        Converter half = OperatedConverters.Half().Build();
        NodalWaveforms nodal = NodalWaveforms.Of(half, half.Modes[0], 2, 0.1, 0.25);
        double step = 0.1 * 4 / 2, decay = Math.Exp(-1);
        Assert.Equal(1 - (0.5 * step * (1 + decay) / (1 - decay)), nodal.MeanPotential("vout"), 1e-12);
        Assert.Equal(step, nodal.CapacitorVoltage(0, 2) - nodal.CapacitorVoltage(0, 0), 1e-12);
        Assert.Equal(step / (1 - decay) / 2 * Math.Exp(-0.5), nodal.SwitchCurrent(half.Modes[0], 0, 1), 1e-12);
        Assert.Equal(nodal.SwitchCurrent(half.Modes[0], 0, 1), nodal.CapacitorCurrent(0, 1), 1e-12);
        Assert.Equal(0, nodal.SwitchCurrent(half.Modes[0], 0, 3));
    }

    private static void AssertSame(double[] times, double[] actual, Func<double, double> expected, string what)
    {
        Assert.Equal(times.Length, actual.Length);
        for (int k = 0; k < times.Length; k++)
        {
            double value = expected(times[k]);
            Assert.True(
                Math.Abs(value - actual[k]) <= Tolerance * Math.Max(1, Math.Abs(value)),
                $"The {what} at {times[k]:R} s: expected {value:R}, but got {actual[k]:R}.");
        }
    }

    // Whether closed switches, capacitors and sources join a node to the reference; every capacitor here has a voltage.
    private static bool Hangs(Converter converter, Mode mode, string node, double instant)
    {
        int phase = 0;
        for (double end = converter.Phases[0].Duty.ToDouble(); instant >= end; end += converter.Phases[++phase].Duty.ToDouble())
        {
        }

        HashSet<string> reached = [Converter.ReferenceNode, converter.InputNode];
        if (converter.Load == LoadKind.Stiff)
        {
            reached.Add(converter.OutputNode);
        }

        (string First, string Second)[] edges =
        [
            .. converter.Capacitors.Select(c => (c.PositiveNode, c.BottomNode)),
            .. converter.Switches.Where((_, i) => mode.ClosedPhases[i].Contains(phase + 1)).Select(s => (s.FirstNode, s.SecondNode)),
        ];
        for (int before = 0; before != reached.Count;)
        {
            before = reached.Count;
            foreach ((string first, string second) in edges.Where(e => reached.Contains(e.First) || reached.Contains(e.Second)))
            {
                reached.UnionWith([first, second]);
            }
        }

        return reached.Contains(node);
    }
}
