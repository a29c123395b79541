using ScNet.Analysis;
using ScNet.Graphs;

namespace ScNet.SteadyState;

/// <summary>
/// The exact flows of a mode seen by its resistors: per phase the conducting resistors (closed switches,
/// then series resistances) and, per unit of charge into the load, the charge through each in the
/// particular flow and in every independent direction.
/// </summary>
internal sealed class ResistorFlows
{
    private const double DependentDirection = 1e-10;

    private readonly Converter _converter;
    private readonly SwitchedNetwork _network;
    private readonly int _phases;

    private ResistorFlows(ModeAnalysis analysis)
    {
        _converter = analysis.Converter;
        _network = _converter.Network;
        _phases = _network.PhaseCount;
        ExactMode exact = analysis.Exact;
        Resistors = new int[_phases][];
        for (int phase = 0; phase < _phases; phase++)
        {
            Resistors[phase] = Conducting(_network.ClosedIn(analysis.Mode.Index, phase));
        }

        Particular = Charges([.. exact.Branches.Select(q => q.ToDouble())], [.. exact.Switches.Select(q => q.ToDouble())]);
        Directions = Independent(exact.Directions.Select(d => Charges(d.Branches, d.Switches)));

        // what directions will take away again is taken away here, where it is not yet squared
        for (int pass = 0; pass < 2; pass++)
        {
            foreach (double[][] unit in Directions)
            {
                AddMultiple(Particular, unit, -Dot(Particular, unit));
            }
        }
    }

    /// <summary>Per phase the resistors: a switch by its index, a capacitor's series resistance by the switch count plus its index.</summary>
    public int[][] Resistors { get; }

    /// <summary>Per phase the charge through each resistor, from first to second terminal, times the root of its ohms.</summary>
    public double[][] Particular { get; }

    /// <summary>The same for each independent direction.</summary>
    public IReadOnlyList<double[][]> Directions { get; }

    public static ResistorFlows Of(ModeAnalysis analysis) => new(analysis);

    public double Ohms(int resistor) => resistor < _network.SwitchCount
        ? _converter.Switches[resistor].OnResistanceOhms
        : _converter.Capacitors[resistor - _network.SwitchCount].EsrOhms;

    private int[] Conducting(ReadOnlySpan<bool> closed)
    {
        List<int> resistors = [];
        for (int s = 0; s < _network.SwitchCount; s++)
        {
            if (closed[s] && _network.SwitchFirst[s] != _network.SwitchSecond[s])
            {
                resistors.Add(s);
            }
        }

        for (int i = 0; i < _network.CapacitorCount; i++)
        {
            if (_converter.Capacitors[i].EsrOhms > 0)
            {
                resistors.Add(_network.SwitchCount + i);
            }
        }

        return [.. resistors];
    }

    private double[][] Charges(double[] branches, double[] switches) =>
        [.. Enumerable.Range(0, _phases).Select(phase => Resistors[phase].Select(r => Math.Sqrt(Ohms(r)) *
            (r < _network.SwitchCount ? switches[(r * _phases) + phase] : branches[((r - _network.SwitchCount) * _phases) + phase])).ToArray())];

    // Directions that no resistor sees, or that repeat others as far as resistors see, settle nothing.
    private static List<double[][]> Independent(IEnumerable<double[][]> directions)
    {
        List<double[][]> kept = [];
        foreach (double[][] direction in directions)
        {
            double before = Length(direction);
            for (int pass = 0; pass < 2; pass++)
            {
                foreach (double[][] unit in kept)
                {
                    AddMultiple(direction, unit, -Dot(direction, unit));
                }
            }

            double after = Length(direction);
            if (after > DependentDirection * before)
            {
                AddMultiple(direction, direction, (1 / after) - 1);
                kept.Add(direction);
            }
        }

        return kept;
    }

    private static double Length(double[][] flow) => Math.Sqrt(Dot(flow, flow));

    private static double Dot(double[][] left, double[][] right) => left.Zip(right, (a, b) => DenseRows.Dot(a, b)).Sum();

    private static void AddMultiple(double[][] target, double[][] source, double factor)
    {
        for (int phase = 0; phase < target.Length; phase++)
        {
            for (int r = 0; r < target[phase].Length; r++)
            {
                target[phase][r] += factor * source[phase][r];
            }
        }
    }
}
