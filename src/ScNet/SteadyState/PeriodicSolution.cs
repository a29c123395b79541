using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// The periodic solution of an independent part at one operating point in the coordinates of the phases: charge and
/// drive of every mode, and the state at the start of every phase. Signals are read off it as waveforms.
/// </summary>
/// <remarks>Symbols and equations: docs/theory/output-impedance.md.</remarks>
internal sealed class PeriodicSolution
{
    private const double DependentState = 1e-12;

    // a voltage by the states it depends on
    private delegate double StateProduct(ReadOnlySpan<double> states);

    private readonly SwitchedNetwork _network;
    private readonly PhaseModes[] _phases;
    private readonly double[] _sources;
    private readonly double _loadCurrent;
    private readonly ModeFlow[] _flow;
    private readonly double[][] _startState;

    public PeriodicSolution(SwitchedNetwork network, PreparedPart prepared, OperatingPoint point, double outputVoltage, double share)
    {
        _phases = prepared.Phases;
        Space = prepared.Space;
        Flows = prepared.Flows;
        _network = network;
        _loadCurrent = share * point.LoadCurrentAmperes;
        double period = 1 / point.FrequencyHz;

        // with a load current no potential depends on the second
        _sources = [point.InputVoltageVolts, outputVoltage];
        double[] amounts = prepared.Amounts(period, reversed: false), inputAmounts = prepared.InputAmounts(period, reversed: false);
        for (int k = 0; k < amounts.Length; k++)
        {
            amounts[k] = (_loadCurrent * period * amounts[k]) + (point.InputVoltageVolts * inputAmounts[k]);
        }

        _flow = new ModeFlow[_phases.Length];
        Bases = new PhaseBasis[_phases.Length];
        for (int j = 0; j < _phases.Length; j++)
        {
            double duty = prepared.Duties[j];
            Bases[j] = new PhaseBasis(_phases[j].Rates, duty * period);
            _flow[j] = ModeFlow.Of(_phases[j], amounts, duty, loadCharge: _loadCurrent * period);
        }

        _startState = States();
    }

    public StateSpace Space { get; }

    public ResistorFlows Flows { get; }

    public PhaseBasis[] Bases { get; }

    /// <summary>The current through a conducting resistor of a phase, by its position in the phase's list, in amperes.</summary>
    public ModalWaveform ResistorCurrent(int phase, int position)
    {
        PhaseModes modes = _phases[phase];
        double scale = 1 / Math.Sqrt(Flows.Ohms(Flows.Resistors[phase][position]));
        return OfCurrents(phase, row => scale * modes.Rows[row, modes.ResistorColumn + position], 0);
    }

    /// <summary>The current into a capacitor's first terminal in amperes.</summary>
    public ModalWaveform CapacitorCurrent(int phase, int capacitor, double farads)
    {
        (int State, double Weight)[] voltage = Space.CapacitorRow(capacitor);
        PhaseModes modes = _phases[phase];
        return OfCurrents(
            phase,
            row => row < modes.FirstMode ? 0 : -farads * StateSpace.Dot(voltage, modes.Coupling(row)),
            farads * StateSpace.Dot(voltage, modes.Load) * _loadCurrent);
    }

    /// <summary>The voltage of a capacitance, behind its series resistance, in volts.</summary>
    public PhaseWaveform CapacitorVoltage(int phase, int capacitor)
    {
        int first = Space.InnerNode[capacitor], second = _network.BranchSecond[capacitor];
        (int State, double Weight)[] row = Space.CapacitorRow(capacitor);
        return OfStates(phase, states => StateSpace.Dot(row, states), SourcePart(first) - SourcePart(second));
    }

    /// <summary>The potential of one node minus that of another, where both are connected, in volts.</summary>
    public PhaseWaveform Difference(int phase, int first, int second)
    {
        double[] row = new double[Space.StateCount];
        double constant = AddPotential(phase, first, 1, row) + AddPotential(phase, second, -1, row);
        return OfStates(phase, states => DenseRows.Dot(row, states), constant);
    }

    private double SourcePart(int node) => DenseRows.Dot(Space.SourcesOf(node), _sources);

    // Adds a node's potential to a row over the states and returns its constant part. A node group that is connected
    // on resistors follows from the triangle: R u + B x + h = what the load demands of it.
    private double AddPotential(int phase, int node, double sign, double[] row)
    {
        ReadOnlySpan<double> states = Space.StatesOf(node);
        for (int x = 0; x < row.Length; x++)
        {
            row[x] += sign * states[x];
        }

        double constant = sign * SourcePart(node);
        PhaseModes modes = _phases[phase];
        int column = modes.GroupOf[Space.Cluster[node]];
        if (column < 0)
        {
            return constant;
        }

        // weights y of the triangle's rows with yᵀR = the unit vector of the group
        int count = modes.FirstMode;
        var weights = new double[count];
        for (int k = 0; k < count; k++)
        {
            double value = modes.GroupOrder[k] == column ? sign : 0;
            for (int l = 0; l < k; l++)
            {
                value -= weights[l] * modes.Rows[l, modes.GroupOrder[k]];
            }

            weights[k] = value / modes.Rows[k, modes.GroupOrder[k]];
            if (weights[k] != 0)
            {
                ReadOnlySpan<double> coupling = modes.Coupling(k);
                for (int x = 0; x < row.Length; x++)
                {
                    row[x] -= weights[k] * coupling[x];
                }

                constant += weights[k] * ((_flow[phase].Charge[k] / Bases[phase].Duration) - SourceDrive(modes, k));
            }
        }

        return constant;
    }

    private double SourceDrive(PhaseModes modes, int row) => DenseRows.Dot(modes.Rows.Row(row).Slice(modes.SourceColumn, _sources.Length), _sources);

    // Every mode's mean of both ends is its drive by the states' mean of both ends and by the sources.
    private double[][] States()
    {
        int states = Space.StateCount;
        var fallen = new double[_phases.Length + 1][];
        fallen[0] = new double[states];
        DenseRows rows = new(_phases.Sum(p => p.ModeCount - p.FirstMode), states + 1);
        int at = 0;
        for (int j = 0; j < _phases.Length; j++)
        {
            PhaseModes modes = _phases[j];
            fallen[j + 1] = [.. fallen[j].Zip(_flow[j].Fall(), (before, fall) => before + fall)];
            for (int row = modes.FirstMode; row < modes.ModeCount; row++)
            {
                ReadOnlySpan<double> coupling = modes.Coupling(row);
                coupling.CopyTo(rows.Row(at));
                double mean = (_flow[j].Charge[row] / Bases[j].Duration)
                    + (0.5 * _flow[j].Drive[row] * ModalFunctions.Langevin(0.5 * modes.Rates[row] * Bases[j].Duration));
                rows[at++, states] = mean - SourceDrive(modes, row)
                    + (0.5 * (DenseRows.Dot(coupling, fallen[j]) + DenseRows.Dot(coupling, fallen[j + 1])));
            }
        }

        double[] start = Solve(rows, states);
        return [.. fallen[.._phases.Length].Select(f => start.Zip(f, (x, y) => x - y).ToArray())];
    }

    // Least squares by reflections; states that nothing fixes are set to zero.
    private static double[] Solve(DenseRows rows, int states)
    {
        int[] order = rows.Triangularise(states, DependentState);
        var solution = new double[states];
        for (int k = order.Length - 1; k >= 0; k--)
        {
            double value = rows[k, states];
            for (int l = k + 1; l < order.Length; l++)
            {
                value -= rows[k, order[l]] * solution[order[l]];
            }

            solution[order[k]] = value / rows[k, order[k]];
        }

        return solution;
    }

    private ModalWaveform OfCurrents(int phase, Func<int, double> weight, double constant)
    {
        var shapes = new double[_phases[phase].ModeCount];
        for (int row = 0; row < shapes.Length; row++)
        {
            double own = weight(row);
            constant += own * _flow[phase].Charge[row] / Bases[phase].Duration;
            shapes[row] = own * _flow[phase].Drive[row];
        }

        return new ModalWaveform(Bases[phase], constant, 0, shapes, []);
    }

    private ModalWaveform OfStates(int phase, StateProduct product, double constant)
    {
        PhaseModes modes = _phases[phase];
        var integrals = new double[modes.ModeCount];
        double slope = Bases[phase].Duration * _loadCurrent * product(modes.Load);
        for (int k = modes.FirstMode; k < integrals.Length; k++)
        {
            double coupling = product(modes.Coupling(k));
            slope -= coupling * _flow[phase].Charge[k];
            integrals[k] = -coupling * _flow[phase].Drive[k];
        }

        return new ModalWaveform(Bases[phase], constant + product(_startState[phase]), slope, [], integrals);
    }
}
