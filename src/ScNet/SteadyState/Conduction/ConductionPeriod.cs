using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.SteadyState.Conduction;

/// <summary>The periodic state of a network whose stretches last given times.</summary>
internal sealed class ConductionPeriod
{
    private readonly DoubleDouble[] _seconds;
    private readonly DoubleDouble[][] _starts;
    private readonly DoubleDouble[][] _ends;

    private ConductionPeriod(ConductionNetwork network, PeriodSolver solver, PeriodFigures figures, DoubleDouble[] seconds, DoubleDouble[][] starts, DoubleDouble[][] ends)
    {
        Network = network;
        Solver = solver;
        Figures = figures;
        _seconds = seconds;
        _starts = starts;
        _ends = ends;
    }

    public ConductionNetwork Network { get; }

    /// <summary>The network with these times.</summary>
    public PeriodSolver Solver { get; }

    /// <summary>Its two-port.</summary>
    public PeriodFigures Figures { get; }

    public double OutputVolts { get; private init; }

    /// <summary>Solves a period; null where it has no periodic state.</summary>
    /// <param name="network">The network.</param>
    /// <param name="seconds">The length of each stretch.</param>
    /// <param name="period">Their sum.</param>
    /// <param name="inputVolts">The input voltage.</param>
    /// <param name="loadAmperes">The average load current.</param>
    public static ConductionPeriod? TryOf(ConductionNetwork network, DoubleDouble[] seconds, DoubleDouble period, double inputVolts, double loadAmperes)
    {
        PeriodSolver solver = network.Solver.WithDuties(Array.ConvertAll(seconds, s => s / period));
        PeriodMap<DoubleDouble> map = new(solver.Fine);
        if (solver.Solve(map, period, out PeriodFigures figures) != NetworkFault.None)
        {
            return null;
        }

        double output = (figures.Ratios.Voltage * inputVolts) - (figures.Ohms * loadAmperes);
        DoubleDouble[] inputs = [DoubleDouble.Of(inputVolts), DoubleDouble.Of(network.Structure.Network.IsStiff ? output : loadAmperes)];
        int n = solver.Fine.StateCount, width = solver.Fine.Width;
        DoubleDouble[][] starts = new DoubleDouble[seconds.Length][], ends = new DoubleDouble[seconds.Length][];
        DoubleDouble[] vector = [.. Enumerable.Range(0, n).Select(x => SmallMatrices.Dot<DoubleDouble>(map.Start.AsSpan(x * inputs.Length, inputs.Length), inputs)), .. inputs];
        for (int j = 0; j < seconds.Length; j++)
        {
            ReadOnlySpan<DoubleDouble> change = map.ChangeOf(j);
            DoubleDouble[] end = [.. vector];
            for (int x = 0; x < n; x++)
            {
                end[x] += SmallMatrices.Dot(change.Slice(x * width, width), vector);
            }

            (starts[j], ends[j]) = (vector, end);
            vector = end;
        }

        return new(network, solver, figures, seconds, starts, ends) { OutputVolts = output };
    }

    /// <summary>An inductor's current as a stretch begins, before what rests in it is left out.</summary>
    public double StartCurrent(int stretch, int inductor) => Current(_starts[stretch], inductor);

    /// <summary>An inductor's current as a stretch ends.</summary>
    public double EndCurrent(int stretch, int inductor) => Current(_ends[stretch], inductor);

    /// <summary>Whether an inductor's current passes through zero in a stretch.</summary>
    /// <param name="stretch">The stretch.</param>
    /// <param name="inductor">The inductor.</param>
    /// <param name="mayTurn">Whether it may do so more than once, so that its ends do not tell.</param>
    public bool PassesZero(int stretch, int inductor, bool mayTurn)
    {
        DoubleDouble[] row = [.. Solver.Fine.Row(Solver.Fine.Inductors, inductor)];
        (double least, double greatest) = mayTurn
            ? new ExponentialWaveform(new(Solver.Fine.Phases[stretch], _starts[stretch], _ends[stretch], _seconds[stretch]), row).Extremes()
            : AtEnds(stretch, row);
        return least < 0 && greatest > 0;
    }

    /// <summary>The least and greatest value of a signal at the ends of a stretch.</summary>
    public (double Least, double Greatest) AtEnds(int stretch, ReadOnlySpan<DoubleDouble> row)
    {
        double start = SmallMatrices.Dot(row, _starts[stretch]).Nearest, end = SmallMatrices.Dot(row, _ends[stretch]).Nearest;
        return (Math.Min(start, end), Math.Max(start, end));
    }

    /// <summary>The largest current of an inductor at any event or boundary.</summary>
    public double LargestCurrent(int inductor) => _starts.Max(s => Math.Abs(Current(s, inductor)));

    private double Current(DoubleDouble[] vector, int inductor) =>
        SmallMatrices.Dot<DoubleDouble>(Solver.Fine.Row(Solver.Fine.Inductors, inductor), vector).Nearest;
}
