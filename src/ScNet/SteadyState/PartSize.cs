using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>What the steady state of one independent part costs, from above, told by its sizes alone.</summary>
internal sealed class PartSize
{
    // rotations of rows take about ten sweeps; chains combine the rows once, and their riders some tens of times
    private const double DenseSweeps = 10;
    private const double ChainSweeps = 2;
    private const double RiderSweeps = 30;

    // directions are made orthogonal twice, and rotated until each has its own time constants
    private const double DirectionSweeps = 20;

    // what it costs to turn to the next phase, in multiplications
    private const double PhaseOverhead = 10;

    // a waveform is looked through on a grid, and its extremes take exponentials of every mode
    private const double WaveformSweeps = 2500;

    private readonly double[] _resistors;
    private readonly double _nodes;
    private readonly double _states;
    private readonly double _directions;
    private readonly bool _delivers;

    /// <summary>Sizes a part.</summary>
    /// <param name="converter">The part.</param>
    /// <param name="topology">Its topology.</param>
    public PartSize(Converter converter, FullTopology topology)
    {
        _delivers = topology.Topology.HasResult;
        _directions = topology.Directions.Count;
        _states = converter.Capacitors.Count;
        _nodes = converter.Network.NodeCount;
        int series = converter.Capacitors.Count(c => c.EsrOhms > 0);
        _resistors = [.. converter.Phases.Select((_, j) => series + (double)converter.Network.ClosedIn(topology.Topology.Mode.Index, j).Count(true))];
    }

    /// <summary>The flows of all resistors: charges of every direction, each made orthogonal to those before it.</summary>
    public SteadyStateCost Flows
    {
        get
        {
            double resistors = _resistors.Sum(), squares = _directions * _directions;
            return new(DirectionSweeps * (resistors + (PhaseOverhead * _resistors.Length)) * squares, (4 * resistors * _directions) + (4 * squares));
        }
    }

    // phases need one another's states where flows depend on their order
    private bool KeepsStates => _delivers && !PhaseSkew.IsNone(_resistors.Length, (int)_directions);

    private double Space => (_nodes + _states) * _states;

    /// <summary>One phase by rotations of all its rows.</summary>
    public SteadyStateCost Dense(int phase) => Dense(phase, withResistors: false);

    /// <summary>The impedance at any frequency; nothing for a part that delivers nothing.</summary>
    /// <param name="isChain">Whether a phase is a set of chains; without it none is.</param>
    public SteadyStateCost Impedance(Predicate<int>? isChain) => _delivers ? Phases(isChain, KeepsStates, withResistors: false) : default;

    /// <summary>Waveforms, stress and losses of every element, or their sensitivities.</summary>
    /// <param name="isChain">Whether a phase is a set of chains; without it none is.</param>
    public SteadyStateCost Elements(Predicate<int>? isChain)
    {
        double elements = 2 * _states, modes = _resistors.Sum(), squares = _resistors.Sum(r => r * r);
        double products = _resistors.Sum(r => (r + elements) * r * ((2 * r) + WaveformSweeps)) + (modes * _states * _states);
        return Phases(isChain, keepsStates: true, withResistors: true) + new SteadyStateCost(products, (2 * squares) + (modes * (_states + 1)));
    }

    private SteadyStateCost Phases(Predicate<int>? isChain, bool keepsStates, bool withResistors)
    {
        SteadyStateCost sum = new(keepsStates ? _resistors.Length * _directions * _directions * _states : 0, 0);
        bool needsSpace = keepsStates;
        for (int j = 0; j < _resistors.Length; j++)
        {
            double resistors = _resistors[j], square = resistors * resistors;
            if (isChain?.Invoke(j) != true)
            {
                needsSpace = true;
                sum += Dense(j, withResistors);
            }
            else if (keepsStates)
            {
                double columns = Columns(j, withResistors);
                sum += new SteadyStateCost((RiderSweeps * square) + (ChainSweeps * square * (columns + resistors)), (resistors * columns) + square);
            }
            else
            {
                sum += new SteadyStateCost(RiderSweeps * square * (1 + _directions), resistors * (1 + _directions));
            }
        }

        return needsSpace ? sum + new SteadyStateCost(0, Space) : sum;
    }

    private double Columns(int phase, bool withResistors) =>
        _states + StateSpace.SourceCount + 1 + _directions + (withResistors ? _resistors[phase] : 0);

    private SteadyStateCost Dense(int phase, bool withResistors)
    {
        double numbers = _resistors[phase] * Columns(phase, withResistors);
        return new(DenseSweeps * _resistors[phase] * numbers, numbers);
    }
}
