using ScNet.Design.Regulation;

namespace ScNet.Design.Maps;

/// <summary>Which mode serves best at which input voltage, output voltage and load, and what it does there.</summary>
/// <remarks>
/// Every mode is asked at every point; kept are all outcomes and the best point. The same to the byte on any number of threads.
/// Cost: some hundred nanoseconds per mode that may be the best of a point. Derivation: docs/theory/maps.md.
/// </remarks>
public sealed class OperatingMap
{
    private const byte None = byte.MaxValue;

    private readonly RegulatedPoint[] _best;
    private readonly byte[] _bestMode;
    private readonly byte[] _outcomes;

    // by rising ratio, those without one first
    private readonly int[] _order;

    private OperatingMap(IReadOnlyList<RegulatedMode> modes, IReadOnlyList<double> inputVolts, IReadOnlyList<double> outputVolts, IReadOnlyList<double> loadAmperes)
    {
        Modes = [.. modes];
        InputVolts = [.. inputVolts];
        OutputVolts = [.. outputVolts];
        LoadAmperes = [.. loadAmperes];
        _order = [.. Enumerable.Range(0, modes.Count).OrderBy(m => Math.Abs(modes[m].Ratio?.ToDouble() ?? 0))];
        Ratios = MapRatios.Of(modes);
        Stresses = [.. modes.Select(m => RatedStress.PerVoltOf(m.Model))];
        int count = checked(inputVolts.Count * outputVolts.Count * loadAmperes.Count);
        _best = new RegulatedPoint[count];
        _bestMode = new byte[count];
        _outcomes = new byte[checked(count * modes.Count)];
    }

    /// <summary>The modes, in the order given.</summary>
    public IReadOnlyList<RegulatedMode> Modes { get; }

    /// <summary>The input voltages in volts (V), in the order given.</summary>
    public IReadOnlyList<double> InputVolts { get; }

    /// <summary>The output voltages in volts (V), in the order given.</summary>
    public IReadOnlyList<double> OutputVolts { get; }

    /// <summary>The load currents in amperes (A), in the order given.</summary>
    public IReadOnlyList<double> LoadAmperes { get; }

    /// <summary>The number of points.</summary>
    public int Count => _best.Length;

    /// <summary>All points, the load fastest, then the output voltage.</summary>
    public IEnumerable<MapPoint> Points => Enumerable.Range(0, Count).Select(PointAt);

    /// <summary>The share of the points at which some mode holds the output.</summary>
    public double HeldShare => _bestMode.Count(m => m != None) / (double)Count;

    /// <summary>Output over input energy of all points that are held, each for the same time; null where none is.</summary>
    public double? AverageEfficiency
    {
        get
        {
            double output = 0, input = 0;
            for (int k = 0; k < Count; k++)
            {
                if (_bestMode[k] != None)
                {
                    output += _best[k].OutputWatts;
                    input += _best[k].InputWatts;
                }
            }

            return input > 0 ? output / input : null;
        }
    }

    internal MapRatios Ratios { get; }

    internal RatedStress?[] Stresses { get; }

    /// <summary>Asks every mode at every point.</summary>
    /// <param name="modes">The modes, from 1 to 254.</param>
    /// <param name="inputVolts">Input voltages in volts (V).</param>
    /// <param name="outputVolts">Output voltages in volts (V) to be held.</param>
    /// <param name="loadAmperes">Load currents in amperes (A), above zero.</param>
    /// <param name="threads">The number of threads at most; 0 for as many as there are processors.</param>
    /// <param name="progress">Is told the share that is done, from 0 to 1, from any thread; null for nobody.</param>
    /// <param name="cancellationToken">Ends the work early.</param>
    /// <exception cref="ArgumentException">A list is empty, or there are too many modes.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A voltage or current is not finite and positive.</exception>
    /// <exception cref="OperationCanceledException">It was ended early.</exception>
    public static OperatingMap Of(
        IReadOnlyList<RegulatedMode> modes,
        IReadOnlyList<double> inputVolts,
        IReadOnlyList<double> outputVolts,
        IReadOnlyList<double> loadAmperes,
        int threads = 0,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default)
    {
        modes = Guard.Copy(modes, nameof(modes));
        RequireAll(inputVolts, nameof(inputVolts));
        RequireAll(outputVolts, nameof(outputVolts));
        RequireAll(loadAmperes, nameof(loadAmperes));
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        if (modes.Count is 0 or >= None)
        {
            throw new ArgumentException($"Expected from 1 to {None - 1} modes, but got {modes.Count}.", nameof(modes));
        }

        OperatingMap map = new(modes, inputVolts, outputVolts, loadAmperes);
        ParallelOptions options = new() { MaxDegreeOfParallelism = threads == 0 ? -1 : threads, CancellationToken = cancellationToken };
        int done = 0;
        ParallelLoop.Run(() => Parallel.For(0, inputVolts.Count, options, input =>
        {
            map.Fill(input);
            progress?.Report(Interlocked.Increment(ref done) / (double)inputVolts.Count);
        }));
        return map;
    }

    /// <summary>The point of an input voltage, an output voltage and a load, each by its position in the lists.</summary>
    /// <param name="input">Position in <see cref="InputVolts"/>.</param>
    /// <param name="output">Position in <see cref="OutputVolts"/>.</param>
    /// <param name="load">Position in <see cref="LoadAmperes"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A position is none of the list.</exception>
    public MapPoint At(int input, int output, int load = 0)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)input, (uint)InputVolts.Count, nameof(input));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)output, (uint)OutputVolts.Count, nameof(output));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)load, (uint)LoadAmperes.Count, nameof(load));
        return PointAt((((input * OutputVolts.Count) + output) * LoadAmperes.Count) + load);
    }

    /// <summary>How many modes and points, and what is held.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{UnitText.Count(Modes.Count, "mode", "modes")} at {UnitText.Count(Count, "point", "points")}, {HeldShare * 100:F1} % held, efficiency {AverageEfficiency * 100:F1} % on average");

    internal ref readonly RegulatedPoint BestAt(int index) => ref _best[index];

    internal int? BestModeAt(int index) => _bestMode[index] == None ? null : _bestMode[index];

    internal RegulationOutcome OutcomeAt(int index, int mode) => (RegulationOutcome)_outcomes[(index * Modes.Count) + mode];

    private MapPoint PointAt(int index) => new(this, index);

    private void Fill(int input)
    {
        int index = input * OutputVolts.Count * LoadAmperes.Count;
        foreach (double outputVolts in OutputVolts)
        {
            foreach (double loadAmperes in LoadAmperes)
            {
                FillPoint(index++, InputVolts[input], outputVolts, loadAmperes);
            }
        }
    }

    private void FillPoint(int index, double inputVolts, double outputVolts, double loadAmperes)
    {
        double least = double.PositiveInfinity;
        int best = None;
        foreach (int m in _order)
        {
            // a mode whose ratio alone takes more than the best so far need not be worked out
            ref byte outcome = ref _outcomes[(index * Modes.Count) + m];
            if (Modes[m].LeastInputWatts(inputVolts, outputVolts, loadAmperes) > least)
            {
                outcome = (byte)Modes[m].OutcomeAt(inputVolts, outputVolts, loadAmperes);
                continue;
            }

            RegulatedPoint point = Modes[m].Hold(inputVolts, outputVolts, loadAmperes);
            outcome = (byte)point.Outcome;
            if (point.IsHeld && point.InputWatts is var watts && (watts < least || (watts == least && m < best)))
            {
                (least, best) = (watts, m);
                _best[index] = point;
            }
        }

        _bestMode[index] = (byte)best;
    }

    private static void RequireAll(IReadOnlyList<double> values, string name)
    {
        ArgumentNullException.ThrowIfNull(values, name);
        if (values.Count == 0)
        {
            throw new ArgumentException("Expected at least one value.", name);
        }

        foreach (double value in values)
        {
            _ = Guard.InRange(value, allowZero: false, name);
        }
    }
}
