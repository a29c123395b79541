using ScNet.Analysis;
using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>The waveforms of a mode at an operating point from exponentials of its state equation, in doubled precision.</summary>
internal sealed class ExponentialSignals : IPeriodicSignals
{
    private readonly Converter _converter;
    private readonly NetworkStructure _structure;
    private readonly StateEquations<DoubleDouble> _equations;
    private readonly PhaseTrajectory[] _phases;

    private ExponentialSignals(Converter converter, PeriodSolver solver, PeriodMap<DoubleDouble> map, DoubleDouble period, double[] inputs)
    {
        _converter = converter;
        _structure = solver.Structure;
        _equations = solver.Fine;
        _phases = new PhaseTrajectory[_equations.Phases.Length];
        int n = _equations.StateCount;
        DoubleDouble[] values = Array.ConvertAll(inputs, DoubleDouble.Of);
        var vector = new DoubleDouble[_equations.Width];
        for (int x = 0; x < n; x++)
        {
            vector[x] = SmallMatrices.Dot<DoubleDouble>(map.Start.AsSpan(x * inputs.Length, inputs.Length), values);
        }

        for (int u = 0; u < inputs.Length; u++)
        {
            vector[n + u] = DoubleDouble.Of(inputs[u]);
        }

        for (int j = 0; j < _phases.Length; j++)
        {
            _phases[j] = PhaseTrajectory.Of(_equations.Phases[j], vector, map.ChangeOf(j), map.IntegralOf(j), _equations.Duties[j] * period);
            vector = _phases[j].End;
        }

        Durations = [.. _phases.Select(p => p.Duration.Nearest)];
    }

    public double[] Durations { get; }

    /// <summary>State and inputs over each phase.</summary>
    public IReadOnlyList<PhaseTrajectory> Trajectories => _phases;

    /// <summary>Solves a mode.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="solver">Its mode.</param>
    /// <param name="frequencyHz">The frequency.</param>
    /// <param name="inputs">Input voltage, and output voltage or load current; then the further load currents.</param>
    public static ExponentialSignals Of(Converter converter, PeriodSolver solver, double frequencyHz, double[] inputs)
    {
        PeriodMap<DoubleDouble> map = new(solver.Fine);
        DoubleDouble period = DoubleDouble.Of(1) / DoubleDouble.Of(frequencyHz);
        return map.TryRun(period)
            ? new(converter, solver, map, period, inputs)
            : throw new InvalidOperationException("The period has been solved before.");
    }

    /// <summary>Which voltages the mode fixes.</summary>
    public static KnownPotentials Known(Converter converter, PeriodSolver solver)
    {
        NetworkStructure structure = solver.Structure;
        StateEquations<DoubleDouble> equations = solver.Fine;
        (DoubleDouble[] free, int[] pivots) = equations.FreeStates();
        return KnownPotentials.Of(
            i => structure.FreeVoltages.All(pattern => pattern[i] == 0),
            (node, phase) => equations.Phases[phase].IsPotentialKnown[node] && !Moves(Potential(phase, node)),
            (s, phase) =>
            {
                int first = converter.Network.SwitchFirst[s], second = converter.Network.SwitchSecond[s];
                bool[] known = equations.Phases[phase].IsPotentialKnown;
                int[] group = structure.PhaseGroup[phase];
                DoubleDouble[] row = [.. Potential(phase, first)];
                SmallMatrices.AddMultiple<DoubleDouble>(Potential(phase, second), DoubleDouble.Of(-1), row);
                return ((known[first] && known[second]) || group[structure.Cluster[first]] == group[structure.Cluster[second]]) && !Moves(row);
            });

        ReadOnlySpan<DoubleDouble> Potential(int phase, int node) => equations.Row(equations.Phases[phase].Potentials, node);

        bool Moves(ReadOnlySpan<DoubleDouble> row)
        {
            int n = equations.StateCount;
            for (int f = 0; f < pivots.Length; f++)
            {
                double sum = 0, size = 0;
                for (int x = 0; x < n; x++)
                {
                    double part = row[x].Nearest * free[(f * n) + x].Nearest;
                    sum += part;
                    size += Math.Abs(part);
                }

                if (Math.Abs(sum) > 1e-12 * size)
                {
                    return true;
                }
            }

            return false;
        }
    }

    public PhaseWaveform? SwitchCurrent(int phase, int index) =>
        _equations.Phases[phase].ResistorCurrents[index] is { Length: > 0 } row ? new ExponentialWaveform(_phases[phase], row) : null;

    public PhaseWaveform CapacitorCurrent(int phase, int index) => Current(phase, index, _converter.Capacitors[index].Farads);

    public PhaseWaveform CapacitorVoltage(int phase, int index) => new ExponentialWaveform(_phases[phase], _equations.CapacitorVoltage(index));

    public PhaseWaveform InductorCurrent(int phase, int index) =>
        new ExponentialWaveform(_phases[phase], [.. _equations.Row(_equations.Inductors, index)]);

    public double ParasiticFarads(int index) => _converter.ParasiticCapacitances.ElementAt(index).Farads;

    public PhaseWaveform ParasiticCurrent(int phase, int index) => Current(phase, _converter.Capacitors.Count + index, ParasiticFarads(index));

    public PhaseWaveform ParasiticVoltage(int phase, int index) => CapacitorVoltage(phase, _converter.Capacitors.Count + index);

    public PhaseWaveform SwitchVoltage(int phase, int index) =>
        Difference(phase, _converter.Network.SwitchFirst[index], _converter.Network.SwitchSecond[index]);

    public PhaseWaveform InputCurrent(int phase) => new ExponentialWaveform(_phases[phase], _equations.Phases[phase].InputCurrent);

    public PhaseWaveform Potential(int phase, string node) => Difference(phase, _converter.Nodes.PositionOf(node), 0);

    private ExponentialWaveform Current(int phase, int capacitor, double farads)
    {
        DoubleDouble[] row = _phases[phase].Derivative(_equations.CapacitorVoltage(capacitor));
        return new(_phases[phase], [.. row.Select(v => v * DoubleDouble.Of(farads))]);
    }

    private ExponentialWaveform Difference(int phase, int first, int second)
    {
        DoubleDouble[] row = [.. _equations.Row(_equations.Phases[phase].Potentials, first)];
        SmallMatrices.AddMultiple<DoubleDouble>(_equations.Row(_equations.Phases[phase].Potentials, second), DoubleDouble.Of(-1), row);
        return new(_phases[phase], row);
    }
}
