using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>
/// Periods of a network, in plain precision where its estimated error is small enough, else in doubled precision. Room
/// is kept from one frequency to the next; of threads that ask at once the others take room of their own.
/// </summary>
internal sealed class PeriodSolver
{
    /// <summary>The estimated relative error from which doubled precision is used.</summary>
    public const double WantedError = 1e-11;

    private const double DriftRounding = 1e-14;
    private const double Dust = 1e-25;

    private PeriodMap<PlainReal>? _plainRoom;
    private PeriodMap<DoubleDouble>? _fineRoom;
    private readonly Lazy<StateEquations<PlainReal>> _plain;
    private readonly double _largestSiemens;
    private int _faultInput = -1;

    public PeriodSolver(NetworkStructure structure, NetworkValues<DoubleDouble> values)
    {
        Structure = structure;
        _largestSiemens = values.Ohms.Take(structure.Network.FirstDiode).Select(r => 1 / r.Nearest).DefaultIfEmpty().Max();
        Fine = StateEquations<DoubleDouble>.Of(structure, values);
        _plain = new(() => Fine.To(v => PlainReal.Of(v.Nearest)));
        (Fault, FaultPhase) = structure.Fault == NetworkFault.None ? (DriftFault(values), -1) : (structure.Fault, structure.FaultPhase);
    }

    private PeriodSolver(PeriodSolver other, DoubleDouble[] duties)
    {
        Structure = other.Structure;
        _largestSiemens = other._largestSiemens;
        Fine = other.Fine.WithDuties(duties);
        _plain = new(() => Fine.To(v => PlainReal.Of(v.Nearest)));
        (Fault, FaultPhase, _faultInput) = (other.Fault, other.FaultPhase, other._faultInput);
    }

    /// <summary>Why there is no periodic state at any frequency.</summary>
    public NetworkFault Fault { get; }

    /// <summary>The phase of the fault, or -1.</summary>
    public int FaultPhase { get; }

    /// <summary>The load that is without a path or a supply, as input of the network; -1 for other faults.</summary>
    public int FaultInput => Structure.Fault == NetworkFault.LoadWithoutPath ? Structure.FaultInput : _faultInput;

    public NetworkStructure Structure { get; }

    /// <summary>The state equations in doubled precision.</summary>
    public StateEquations<DoubleDouble> Fine { get; }

    /// <summary>The state equations in plain precision.</summary>
    public StateEquations<PlainReal> Plain => _plain.Value;

    /// <summary>The largest conductance of the network.</summary>
    public double LargestSiemens => _largestSiemens;

    private bool IsStiff => Structure.Network.IsStiff;

    public static PeriodSolver Of(SwitchedLinearNetwork network, NetworkValues<DoubleDouble> values)
    {
        NetworkStructure structure = NetworkStructure.Of(
            network, Array.ConvertAll(values.Farads, v => v.Nearest), Array.ConvertAll(values.Henries, v => v.Nearest));
        return new PeriodSolver(structure, values);
    }

    /// <summary>The same network with phases of other lengths.</summary>
    public PeriodSolver WithDuties(DoubleDouble[] duties) => new(this, duties);

    /// <summary>The two-port at a frequency.</summary>
    /// <param name="frequencyHz">The frequency.</param>
    /// <param name="found">What was found.</param>
    public NetworkFault Solve(double frequencyHz, out PeriodFigures found)
    {
        NetworkFault fault = Solve(_plain.Value, ref _plainRoom, PlainReal.Of(1 / frequencyHz), out found);
        return fault == NetworkFault.None && found.RelativeError <= WantedError
            ? fault
            : SolveFine(frequencyHz, out found);
    }

    /// <summary>The two-port at a frequency in doubled precision.</summary>
    public NetworkFault SolveFine(double frequencyHz, out PeriodFigures found) =>
        Solve(Fine, ref _fineRoom, DoubleDouble.Of(1) / DoubleDouble.Of(frequencyHz), out found);

    /// <summary>The two-port of a period in room that the caller keeps.</summary>
    public NetworkFault Solve<T>(PeriodMap<T> map, T period, out PeriodFigures found)
        where T : struct, IReal<T>
    {
        found = default;
        if (!map.TryRun(period))
        {
            return NetworkFault.Resonance;
        }

        if (IsStiff && !(Math.Abs(map.Output[NetworkStructure.Load].Nearest) > map.Error.Output[NetworkStructure.Load]))
        {
            return NetworkFault.NoOutputCurrent;
        }

        found = PeriodFigures.Of(map, period, IsStiff, _largestSiemens);
        return found.IsFinite ? NetworkFault.None : NetworkFault.Resonance;
    }

    // A state that nothing moves back must not be driven on average either: loads may, but sources only act through loops that
    // see nothing of it. What is not zero there is far from rounding.
    private NetworkFault DriftFault(NetworkValues<DoubleDouble> values)
    {
        (DoubleDouble[] directions, int[] pivots) = Fine.FreeStates();
        int n = Fine.StateCount;

        // where all currents cancel what is left of them is no measure: one volt across the least resistance is
        double largest = Fine.Phases.SelectMany(p => p.Generator).Select(v => Math.Abs(v.Nearest))
            .Append(_largestSiemens / Math.Sqrt(values.Farads.Select(f => f.Nearest).DefaultIfEmpty(double.PositiveInfinity).Min())).Max();
        for (int f = 0; f < pivots.Length; f++)
        {
            for (int u = NetworkStructure.Load; u < Fine.InputCount; u++)
            {
                DoubleDouble drift = default;
                double size = 0;
                for (int j = 0; j < Fine.Phases.Length; j++)
                {
                    for (int x = 0; x < n; x++)
                    {
                        DoubleDouble part = Fine.Duties[j] * directions[(f * n) + x] * Fine.Phases[j].Generator[(x * Fine.Width) + n + u];
                        drift += part;
                        size += Math.Abs(part.Nearest);
                    }
                }

                if (Math.Abs(drift.Nearest) > (DriftRounding * size) + (Dust * largest))
                {
                    _faultInput = u;
                    return NetworkFault.LoadWithoutSupply;
                }
            }
        }

        return NetworkFault.None;
    }

    private NetworkFault Solve<T>(StateEquations<T> equations, ref PeriodMap<T>? room, T period, out PeriodFigures found)
        where T : struct, IReal<T>
    {
        PeriodMap<T> map = Interlocked.Exchange(ref room, null) ?? new PeriodMap<T>(equations);
        try
        {
            return Solve(map, period, out found);
        }
        finally
        {
            room = map;
        }
    }
}
