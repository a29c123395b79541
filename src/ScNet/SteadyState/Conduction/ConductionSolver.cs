using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.SteadyState.Conduction;

/// <summary>The operating point of a mode whose phases last given times: which events come, when, and which diodes conduct.</summary>
internal sealed class ConductionSolver
{
    private const double Rounding = 1e-9;
    private const int SweepLimit = 8;
    private const int DiodesAtOnce = 3;

    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly double _inputVolts;
    private readonly double _loadAmperes;
    private readonly int[] _eventInductor;
    private readonly int[][][] _candidates;

    public ConductionSolver(Converter converter, Mode mode, double inputVolts, double loadAmperes)
    {
        _converter = converter;
        _mode = mode;
        _inputVolts = inputVolts;
        _loadAmperes = loadAmperes;
        int phases = converter.Phases.Count;
        ConductionNetwork open = Connect(NoDiodes(phases), new bool[phases]);
        _eventInductor = [.. Enumerable.Range(0, phases).Select(j => EventInductor(open, j))];
        _candidates = [.. Enumerable.Range(0, phases).Select(j => Candidates(open, j))];
    }

    /// <summary>The inductor whose current ends each phase, or -1.</summary>
    public IReadOnlyList<int> EventInductors => _eventInductor;

    /// <summary>Solves for phases of given lengths.</summary>
    /// <exception cref="ScNetException">There is no such operating point.</exception>
    public ConductionSolution Solve(double[] phaseSeconds)
    {
        int[][] conducting = NoDiodes(phaseSeconds.Length);
        ConductionSolution? solution = SolveTimes(phaseSeconds, conducting, out int[] events);
        for (int sweep = 0; sweep < SweepLimit; sweep++)
        {
            int[] wrong = [.. Enumerable.Range(0, phaseSeconds.Length).Where(j => _candidates[j].Length > 1 && (solution is null || !IsConsistent(solution, j)))];
            if (wrong.Length == 0)
            {
                break;
            }

            foreach (int phase in wrong)
            {
                foreach (int[] candidate in _candidates[phase])
                {
                    conducting[phase] = candidate;
                    solution = SolveTimes(phaseSeconds, conducting, out events);
                    if (solution is not null && IsConsistent(solution, phase))
                    {
                        break;
                    }
                }
            }
        }

        if (solution is null)
        {
            throw ConductionFault.NoTime(_converter, _mode, events);
        }

        int faulty = Enumerable.Range(0, phaseSeconds.Length).FirstOrDefault(j => !IsConsistent(solution, j), -1);
        return faulty < 0 ? solution : throw ConductionFault.Diodes(_converter, _mode, faulty, _candidates[faulty].Length > 1);
    }

    private static int[][] NoDiodes(int phases) => [.. Enumerable.Repeat<int[]>([], phases)];

    private ConductionNetwork Connect(IReadOnlyList<int[]> conducting, bool[] endsEarly)
    {
        ConductionNetwork network = ConductionNetwork.Of(_converter, _mode, _inputVolts, conducting, endsEarly);
        int stretch = network.Solver.FaultPhase;
        FaultReport.Require(_converter, _mode, network.Solver.Fault, stretch < 0 ? -1 : network.Stretches[stretch].Phase);
        return network;
    }

    // Times for given diodes. A phase is taken to last whole until its current is seen to pass through zero.
    private ConductionSolution? SolveTimes(double[] phaseSeconds, IReadOnlyList<int[]> conducting, out int[] events)
    {
        int phases = phaseSeconds.Length;
        bool[] endsEarly = new bool[phases], isLate = new bool[phases];
        var units = new double[phases];
        while (true)
        {
            ConductionNetwork network = Connect(conducting, endsEarly);
            int[] early = [.. Enumerable.Range(0, phases).Where(j => endsEarly[j])];
            events = early;
            double[]? shares = [];
            int late = -1;
            if (early.Length > 0)
            {
                double[] first = [.. early.Select(j => SteadyShare(network, phaseSeconds, j))];
                shares = Find(first, out late);
                if (shares is null && late < 0 && early is [var only])
                {
                    // with its end in time a current may flow the other way than whole
                    units[only] = -units[only];
                    shares = Find(first, out late);
                }
            }

            if (late >= 0)
            {
                endsEarly[early[late]] = false;
                isLate[early[late]] = true;
                continue;
            }

            if (shares is null
                || ConductionSolution.TryOf(network, phaseSeconds, early, shares, _inputVolts, _loadAmperes) is not { } solution
                || early.Any(j => solution.Period.StartCurrent(StretchOf(network, j), _eventInductor[j]) / units[j] < -Rounding))
            {
                return null;
            }

            bool isDone = true;
            for (int j = 0; j < phases; j++)
            {
                int stretch = StretchOf(network, j);
                if (_eventInductor[j] >= 0 && !endsEarly[j] && !network.Structure.RestingInductors[stretch].Contains(_eventInductor[j]))
                {
                    double start = solution.Period.StartCurrent(stretch, _eventInductor[j]), largest = solution.Period.LargestCurrent(_eventInductor[j]);
                    if (Math.Abs(start) > Rounding * largest && solution.Period.PassesZero(stretch, _eventInductor[j], SteadyShare(network, phaseSeconds, j) < 1))
                    {
                        if (isLate[j])
                        {
                            // no time ends the current, and whole it does not last
                            events = [j];
                            return null;
                        }

                        (endsEarly[j], units[j], isDone) = (true, Math.CopySign(largest, start), false);
                    }
                }
            }

            if (isDone)
            {
                return solution;
            }

            double[]? Find(double[] first, out int late) =>
                EventTimes.Find(early.Length, trial => Currents(network, phaseSeconds, early, units, trial), first, out late);
        }
    }

    // The first stretch of a phase.
    private static int StretchOf(ConductionNetwork network, int phase) => Array.FindIndex(network.Stretches, s => s.Phase == phase);

    // The share of a phase in which no current can turn more than once.
    private static double SteadyShare(ConductionNetwork network, double[] phaseSeconds, int phase)
    {
        int stretch = StretchOf(network, phase);
        return Math.Min(1, 0.5 / (network.Solver.Fine.Phases[stretch].Norm * phaseSeconds[phase]));
    }

    // In units that stay the same: in shares of the largest current of each trial, an end that is itself the largest would not change.
    private double[]? Currents(ConductionNetwork network, double[] phaseSeconds, int[] events, double[] units, double[] shares)
    {
        if (ConductionSolution.TryOf(network, phaseSeconds, events, shares, _inputVolts, _loadAmperes)?.Period is not { } period)
        {
            return null;
        }

        return [.. events.Select(j =>
        {
            int stretch = StretchOf(network, j);
            return period.EndCurrent(stretch, _eventInductor[j]) / units[j];
        })];
    }

    // In every stretch of a phase: what rests carried nothing, what conducts carries forward current, what blocks stays below its forward voltage.
    private bool IsConsistent(ConductionSolution solution, int phase)
    {
        ConductionPeriod period = solution.Period;
        ConductionNetwork network = period.Network;
        for (int k = 0; k < network.Stretches.Length; k++)
        {
            if (network.Stretches[k].Phase != phase)
            {
                continue;
            }

            if (network.Structure.RestingInductors[k].Any(e => Math.Abs(period.StartCurrent(k, e)) > Rounding * period.LargestCurrent(e)))
            {
                return false;
            }

            PhaseEquations<DoubleDouble> equations = period.Solver.Fine.Phases[k];
            for (int s = 0; s < _converter.Switches.Count; s++)
            {
                if (_converter.Switches[s].DiodeVolts is not { } forward || equations.ResistorCurrents[s].Length > 0)
                {
                    continue;
                }

                int diode = network.Diodes.Contains(s) ? network.DiodeResistor(s) : -1;
                if (diode >= 0 && equations.ResistorCurrents[diode] is { Length: > 0 } current)
                {
                    // the row counts from cathode to anode
                    (double least, double greatest) = period.AtEnds(k, current);
                    if (greatest > Rounding * Math.Abs(least))
                    {
                        return false;
                    }
                }
                else if (ForwardVolts(period, k, s) is { } volts && volts > forward + (Rounding * (forward + _inputVolts)))
                {
                    return false;
                }
            }
        }

        return true;
    }

    // The largest voltage at the ends of a stretch from second to first terminal of an open switch, where it is fixed.
    private double? ForwardVolts(ConductionPeriod period, int stretch, int index)
    {
        StateEquations<DoubleDouble> all = period.Solver.Fine;
        PhaseEquations<DoubleDouble> equations = all.Phases[stretch];
        int first = _converter.Network.SwitchFirst[index], second = _converter.Network.SwitchSecond[index];
        if (!equations.IsPotentialKnown[first] || !equations.IsPotentialKnown[second])
        {
            return null;
        }

        DoubleDouble[] row = [.. all.Row(equations.Potentials, second)];
        SmallMatrices.AddMultiple<DoubleDouble>(all.Row(equations.Potentials, first), DoubleDouble.Of(-1), row);
        return period.AtEnds(stretch, row).Greatest;
    }

    // The inductor that is said to end a phase, or the one that the phase leaves to its diodes.
    private int EventInductor(ConductionNetwork open, int phase)
    {
        int named = Enumerable.Range(0, _converter.Inductors.Count).FirstOrDefault(l => _mode.UntilZeroPhases[l].Contains(phase + 1), -1);
        int states = open.Solver.Fine.StateCount;
        return named >= 0 ? named
            : open.Solver.Fine.Phases[phase].RestingDirections.Length == states && states > 0 ? open.Structure.RestingInductors[phase][0] : -1;
    }

    // No diode, then the sets of diodes, small ones first, that give every inductor of a phase a path without one too many.
    private int[][] Candidates(ConductionNetwork open, int phase)
    {
        List<int[]> found = [[]];
        if (open.Structure.RestingInductors[phase].Length > 0)
        {
            bool[] closed = open.Structure.Network.Closed[phase];
            int[] diodes = [.. Enumerable.Range(0, _converter.Switches.Count).Where(s => _converter.Switches[s].DiodeVolts is not null && !closed[s])];
            foreach (int[] set in Enumerable.Range(1, Math.Min(DiodesAtOnce, diodes.Length)).SelectMany(size => Subsets(diodes, size, 0)))
            {
                bool isMinimal = !found.Skip(1).Any(smaller => smaller.All(set.Contains));
                if (isMinimal && GivesPaths(phase, set))
                {
                    found.Add(set);
                }
            }
        }

        return [.. found];
    }

    private bool GivesPaths(int phase, int[] set)
    {
        int[][] conducting = NoDiodes(_converter.Phases.Count);
        conducting[phase] = set;
        return ConductionNetwork.Of(_converter, _mode, _inputVolts, conducting, new bool[conducting.Length]).Structure.RestingInductors[phase].Length == 0;
    }

    private static IEnumerable<int[]> Subsets(int[] items, int size, int from)
    {
        if (size == 0)
        {
            yield return [];
            yield break;
        }

        for (int k = from; k <= items.Length - size; k++)
        {
            foreach (int[] rest in Subsets(items, size - 1, k + 1))
            {
                yield return [items[k], .. rest];
            }
        }
    }
}
