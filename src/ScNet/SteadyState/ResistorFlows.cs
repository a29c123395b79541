using ScNet.Analysis;
using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// The exact flows of a mode seen by its resistors: per phase the conducting resistors (closed switches,
/// then series resistances) and, per unit of charge into the load, the charge through each in the
/// particular flow and in every independent direction, with what each flow takes from the input.
/// </summary>
internal sealed class ResistorFlows
{
    private readonly Converter _converter;
    private readonly SwitchedNetwork _network;
    private readonly int _phases;
    private readonly double[] _duties;
    private readonly Lazy<int[][]> _positions;

    private ResistorFlows(Converter converter, FullTopology exact)
    {
        TopologySolution own = exact.Topology;
        _converter = converter;
        _network = _converter.Network;
        _phases = _network.PhaseCount;
        _duties = [.. _converter.Phases.Select(p => p.Duty.ToDouble())];
        Resistors = new int[_phases][];
        for (int phase = 0; phase < _phases; phase++)
        {
            Resistors[phase] = Conducting(_network.ClosedIn(own.Mode.Index, phase));
        }

        _positions = new(() => [.. Resistors.Select(Invert)]);

        if (!own.HasResult)
        {
            Particular = [.. Resistors.Select(r => new double[r.Length])];
            (Directions, DirectionInputs) = ([], []);
            return;
        }

        Particular = Charges(Array.ConvertAll(own.Branches, q => q.ToDouble()), Array.ConvertAll(own.Switches, q => q.ToDouble()));
        ParticularInput = own.Settled!.IdealPoint.Ratio.ToDouble();
        (Directions, DirectionInputs) = Independent(exact.Directions);

        // the flow of least dissipation at high frequency, so that no amount has to undo a large part of it
        ParticularInput -= MakeOrthogonal(Particular, Directions, DirectionInputs);
    }

    /// <summary>Per phase the resistors: a switch by its index, a capacitor's series resistance by the switch count plus its index.</summary>
    public int[][] Resistors { get; }

    /// <summary>
    /// Per phase the charge through each resistor, from first to second terminal, times the root of its
    /// ohms: of all flows of one unit into the load the one that dissipates least as constant currents; nothing
    /// in a part that delivers nothing.
    /// </summary>
    public double[][] Particular { get; }

    /// <summary>The same for each independent direction; constant currents of any two dissipate independently.</summary>
    public IReadOnlyList<double[][]> Directions { get; }

    /// <summary>The charge that the particular flow takes from the input.</summary>
    public double ParticularInput { get; }

    /// <summary>The charge that each direction takes from the input; zeros without parasitic capacitances.</summary>
    public double[] DirectionInputs { get; }

    /// <summary>Finds the flows.</summary>
    /// <param name="converter">The converter, with its parasitic capacitances as capacitors.</param>
    /// <param name="exact">The same, one mode of it.</param>
    public static ResistorFlows Of(Converter converter, FullTopology exact) => new(converter, exact);

    /// <summary>The position of a resistor in the list of a phase, or -1 where it does not conduct there.</summary>
    public int Position(int phase, int resistor) => _positions.Value[phase][resistor];

    public double Ohms(int resistor) => resistor < _network.SwitchCount
        ? _converter.Switches[resistor].Ohms
        : _converter.Capacitors[resistor - _network.SwitchCount].EsrOhms;

    private int[] Invert(int[] resistors)
    {
        var positions = new int[_network.SwitchCount + _network.CapacitorCount];
        positions.AsSpan().Fill(-1);
        for (int r = 0; r < resistors.Length; r++)
        {
            positions[resistors[r]] = r;
        }

        return positions;
    }

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

    private void Fill(Span<double> row, int[] starts, FlowDirection direction)
    {
        Add(row, direction.Switches, first: 0, _network.SwitchCount);
        Add(row, direction.Branches, first: _network.SwitchCount, _network.CapacitorCount);
        row[^1] = direction.InputCharge(_network);

        void Add(Span<double> row, SparseVector part, int first, int count)
        {
            for (int e = 0; e < part.Count && part.Indices[e] < count * _phases; e++)
            {
                int resistor = first + (part.Indices[e] / _phases), phase = part.Indices[e] % _phases;
                if (Position(phase, resistor) is var position and >= 0)
                {
                    row[starts[phase] + position] = part.Values[e];
                }
            }
        }
    }

    // Directions that no resistor sees, or that repeat others as far as resistors see, settle nothing.
    private (List<double[][]> Directions, double[] Inputs) Independent(IReadOnlyList<FlowDirection> directions)
    {
        int[] starts = new int[_phases];
        for (int phase = 1; phase < _phases; phase++)
        {
            starts[phase] = starts[phase - 1] + Resistors[phase - 1].Length;
        }

        double[] weights = [.. Resistors.SelectMany((own, phase) => own.Select(r => Ohms(r) / _duties[phase]))];
        DenseRows rows = new(directions.Count, weights.Length + 1);
        for (int k = 0; k < directions.Count; k++)
        {
            Fill(rows.Row(k), starts, directions[k]);
        }

        List<double[][]> kept = [];
        List<double> inputs = [];
        foreach (int row in GradedDirections.Of(rows, weights))
        {
            double[][] charges = [.. Resistors.Select((own, phase) => own.Select((r, k) => Math.Sqrt(Ohms(r)) * rows[row, starts[phase] + k]).ToArray())];
            double input = rows[row, weights.Length] - MakeOrthogonal(charges, kept, inputs), length = Length(charges);
            kept.Add([.. charges.Select(phase => phase.Select(charge => charge / length).ToArray())]);
            inputs.Add(input / length);
        }

        return (kept, [.. inputs]);
    }

    // Returns what the parts taken off take from the input.
    private double MakeOrthogonal(double[][] flow, IReadOnlyList<double[][]> units, IReadOnlyList<double> inputs)
    {
        double input = 0;
        for (int pass = 0; pass < 2; pass++)
        {
            for (int k = 0; k < units.Count; k++)
            {
                double part = Dot(flow, units[k]);
                AddMultiple(flow, units[k], -part);
                input += part * inputs[k];
            }
        }

        return input;
    }

    private double Length(double[][] flow) => Math.Sqrt(Dot(flow, flow));

    // What constant currents of these charges dissipate together.
    private double Dot(double[][] left, double[][] right)
    {
        double sum = 0;
        for (int phase = 0; phase < _phases; phase++)
        {
            sum += DenseRows.Dot(left[phase], right[phase]) / _duties[phase];
        }

        return sum;
    }

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
