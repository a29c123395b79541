using ScNet.Kernel;
using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.SteadyState.Conduction;

/// <summary>
/// A mode as a network whose phases are stretches: a phase that an inductor's current ends is followed by one in which
/// every switch is open, and body diodes conduct where they are chosen to.
/// </summary>
internal sealed class ConductionNetwork
{
    private ConductionNetwork(Stretch[] stretches, int[] diodes, PeriodSolver solver)
    {
        Stretches = stretches;
        Diodes = diodes;
        Solver = solver;
    }

    public Stretch[] Stretches { get; }

    /// <summary>The switches whose body diodes come last among the network's resistors.</summary>
    public int[] Diodes { get; }

    /// <summary>The network, with every stretch a whole phase long.</summary>
    public PeriodSolver Solver { get; }

    public NetworkStructure Structure => Solver.Structure;

    /// <summary>The resistor that stands for a switch's diode.</summary>
    public int DiodeResistor(int @switch) => Structure.Network.FirstDiode + Array.IndexOf(Diodes, @switch);

    /// <summary>Connects the stretches.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="inputVolts">The input voltage, in shares of which forward voltages are inputs.</param>
    /// <param name="conducting">Per phase the switches whose body diodes conduct, up to its event.</param>
    /// <param name="endsEarly">Per phase whether its event comes before its end.</param>
    public static ConductionNetwork Of(Converter converter, Mode mode, double inputVolts, IReadOnlyList<int[]> conducting, bool[] endsEarly)
    {
        (SwitchedLinearNetwork plain, NetworkValues<DoubleDouble> values) = ConverterNetwork.Of(converter, mode);
        int switches = converter.Switches.Count;
        int[] diodes = [.. conducting.SelectMany(s => s).Distinct().Order()];
        List<Stretch> stretches = [];
        List<bool[]> closed = [];
        for (int j = 0; j < plain.PhaseCount; j++)
        {
            stretches.Add(new(j, IsAfterEvent: false, endsEarly[j]));
            closed.Add([.. plain.Closed[j], .. diodes.Select(d => conducting[j].Contains(d))]);
            if (endsEarly[j])
            {
                stretches.Add(new(j, IsAfterEvent: true, HasEvent: false));
                closed.Add([.. new bool[switches], .. plain.Closed[j][switches..], .. new bool[diodes.Length]]);
            }
        }

        SwitchedLinearNetwork network = new()
        {
            NodeCount = plain.NodeCount,
            Resistors = [.. plain.Resistors, .. diodes.Select(d => new NodePair(converter.Network.SwitchFirst[d], converter.Network.SwitchSecond[d]))],
            DiodeCount = diodes.Length,
            Capacitors = plain.Capacitors,
            Inductors = plain.Inductors,
            HasWinding = plain.HasWinding,
            InputNode = plain.InputNode,
            OutputNode = plain.OutputNode,
            IsStiff = plain.IsStiff,
            InductorsMayRest = true,
            Closed = [.. closed],
        };
        return new([.. stretches], diodes, PeriodSolver.Of(network, new(
            [.. values.Ohms, .. diodes.Select(_ => default(DoubleDouble))],
            values.Farads,
            values.Henries,
            values.WindingOhms,
            [.. stretches.Select(s => values.Duties[s.Phase] * DoubleDouble.Of(s.HasEvent || s.IsAfterEvent ? 0.5 : 1))])
        {
            DiodeRatios = [.. diodes.Select(d => DoubleDouble.Of(converter.Switches[d].DiodeVolts!.Value) / DoubleDouble.Of(inputVolts))],
        }));
    }
}
