using System.Globalization;
using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>
/// What the dense parts of a steady state would cost, told before any of them is begun, so that a network too large
/// is refused instead of running for minutes or out of memory.
/// </summary>
/// <remarks>
/// Every count is an upper estimate: rows that do not hang together cost less. Counted in double precision, as sizes
/// of nothing real go beyond its range while their products go beyond that of integers.
/// </remarks>
internal sealed class SteadyStateSize
{
    /// <summary>The most multiplications: a minute or two of one core.</summary>
    public const double MostSteps = 2e11;

    /// <summary>The most numbers kept at once: two gigabytes.</summary>
    public const double MostNumbers = 2.5e8;

    // rotations of rows take about ten sweeps; chains combine the rows once, and their riders some tens of times
    private const double DenseSweeps = 10;
    private const double ChainSweeps = 2;
    private const double RiderSweeps = 30;

    // directions are made orthogonal twice, and rotated until each has its own time constants
    private const double DirectionSweeps = 20;

    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly double[] _resistors;
    private readonly double _states;
    private readonly double _directions;

    public SteadyStateSize(Converter converter, Mode mode, TopologySolution topology)
    {
        _converter = converter;
        _mode = mode;
        _directions = topology.IdealPoint is null ? 0 : topology.Directions.Count;
        _states = converter.Capacitors.Count;
        int series = converter.Capacitors.Count(c => c.EsrOhms > 0);
        _resistors = [.. converter.Phases.Select((_, j) => series + Closed(converter.Network.ClosedIn(mode.Index, j)))];
    }

    /// <summary>The flows of all resistors: charges of every direction, each made orthogonal to those before it.</summary>
    /// <exception cref="ScNetException">They are too large.</exception>
    public void RequireFlows()
    {
        double resistors = _resistors.Sum();
        double squares = _directions * _directions;
        Require(DirectionSweeps * resistors * squares, (4 * resistors * _directions) + (4 * squares));
    }

    /// <summary>One phase by rotations of all its rows.</summary>
    /// <param name="phase">The phase.</param>
    /// <exception cref="ScNetException">They are too large.</exception>
    public void RequireDense(int phase) => Require(DenseSteps(phase, withResistors: false), DenseNumbers(phase, withResistors: false));

    /// <summary>The impedance at any frequency.</summary>
    /// <param name="isChain">Whether a phase is a set of chains; asked only where dense rows would be too large.</param>
    /// <param name="keepsStates">Whether phases need one another's states.</param>
    /// <exception cref="ScNetException">It is too large.</exception>
    public void RequireImpedance(Predicate<int> isChain, bool keepsStates) => RequirePhases(isChain, keepsStates, withResistors: false, steps: 0, numbers: 0);

    /// <summary>Waveforms, stress and losses of every element, or their sensitivities.</summary>
    /// <param name="isChain">Whether a phase is a set of chains; asked only where dense rows would be too large.</param>
    /// <exception cref="ScNetException">They are too large.</exception>
    public void RequireElements(Predicate<int> isChain)
    {
        double elements = 2 * _states, modes = _resistors.Sum(), squares = _resistors.Sum(r => r * r);
        double products = _resistors.Sum(r => (r + elements) * r * r) + (modes * _states * _states);
        RequirePhases(isChain, keepsStates: true, withResistors: true, products, (2 * squares) + (modes * (_states + 1)));
    }

    private void RequirePhases(Predicate<int> isChain, bool keepsStates, bool withResistors, double steps, double numbers)
    {
        int[] phases = [.. Enumerable.Range(0, _resistors.Length)];
        double space = SpaceNumbers();
        steps += keepsStates ? phases.Length * _directions * _directions * _states : 0;
        double denseSteps = steps + phases.Sum(j => DenseSteps(j, withResistors)), denseNumbers = numbers + space + phases.Sum(j => DenseNumbers(j, withResistors));
        if (denseSteps <= MostSteps && denseNumbers <= MostNumbers)
        {
            return;
        }

        bool[] chains = [.. phases.Select(j => isChain(j))];
        numbers += keepsStates || chains.Contains(false) ? space : 0;
        foreach (int j in phases)
        {
            double square = _resistors[j] * _resistors[j];
            steps += !chains[j] ? DenseSteps(j, withResistors)
                : keepsStates ? (RiderSweeps * square) + (ChainSweeps * square * (Columns(j, withResistors) + _resistors[j]))
                : RiderSweeps * square * (1 + _directions);
            numbers += !chains[j] ? DenseNumbers(j, withResistors)
                : keepsStates ? DenseNumbers(j, withResistors) + square
                : _resistors[j] * (1 + _directions);
        }

        Require(steps, numbers);
    }

    private void Require(double steps, double numbers)
    {
        if (steps <= MostSteps && numbers <= MostNumbers)
        {
            return;
        }

        string size = $"{UnitText.Count(_converter.Phases.Count, "phase", "phases")} with up to {UnitText.Count((int)_resistors.Max(), "resistance", "resistances")}, "
            + $"{UnitText.Count(_converter.Capacitors.Count, "capacitor", "capacitors")} and {UnitText.Count((int)_directions, "free direction", "free directions")}";
        string excess = steps > MostSteps ? $"{Round(steps)} multiplications, and at most {Round(MostSteps)} are allowed"
            : $"{Round(8 * numbers)} bytes, and at most {Round(8 * MostNumbers)} are allowed";
        throw new ScNetException($"Mode '{_mode.Name}' of '{_converter.Name}' has no steady state:", [new Diagnostic(
            DiagnosticSeverity.Error,
            DiagnosticCodes.SteadyStateTooLarge,
            $"The exact steady state of {size} would take {excess}. Of equal cells side by side analyse one by itself and divide its impedance by their number; otherwise analyse the parts of the converter one by one.",
            [])]);
    }

    private static string Round(double value) => value.ToString("0.#E+0", CultureInfo.InvariantCulture);

    private double SpaceNumbers() => (_converter.Network.NodeCount + _states) * _states;

    private double Columns(int phase, bool withResistors) =>
        _states + StateSpace.SourceCount + 1 + _directions + (withResistors ? _resistors[phase] : 0);

    private double DenseSteps(int phase, bool withResistors) => DenseSweeps * _resistors[phase] * _resistors[phase] * Columns(phase, withResistors);

    private double DenseNumbers(int phase, bool withResistors) => _resistors[phase] * Columns(phase, withResistors);

    private static int Closed(ReadOnlySpan<bool> closed) => closed.Count(true);
}
