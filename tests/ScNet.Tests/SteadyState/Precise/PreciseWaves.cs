using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>
/// The waveforms of a mode at an operating point: the state with the inputs behind it at the start of every phase, and the
/// integral of its products, W = ∫ z zᵀ, phase by phase.
/// </summary>
/// <remarks>
/// W' = A W + W Aᵀ + z₀ z₀ᵀ, by its series over a short time, then doubled: W(2t) = W(t) + Φ(t) W(t) Φ(t)ᵀ.
/// </remarks>
internal sealed class PreciseWaves
{
    private const int LargestTerm = 200;

    // an extreme found to 2⁻⁴⁰ of a phase is off by the square of that
    private const int FinestLevel = 40;

    // a phase is looked at in 2⁶ steps, and in quarters of every halving towards its start, more where something rings: 16 steps a turn
    private const int CoarsestLevel = 6;
    private const int Quarters = 2;
    private const double StepsPerTurn = 16;

    // what rings longer than e⁻²⁸ is alive
    private const double LifeTimes = 28;

    // in a usual run; campaigns take the time for more
    private static int FinestGrid => LawCheck.Total(1) > 1 || LawCheck.IsOneCase ? 16 : 12;

    private readonly int _inputAt;
    private readonly BigReal _frequencyHz;
    private readonly BigReal _inputVolts;
    private readonly BigMatrix[] _products;
    private readonly BigMatrix[] _rates;
    private readonly Lazy<(BigMatrix[] Maps, (int Level, BigMatrix Vector)[] Steps)[]> _grids;

    private PreciseWaves(PreciseNetwork network, PrecisePeriod period, BigReal[] inputs)
    {
        int n = network.StateCount, p = network.InputCount;
        (_inputAt, _frequencyHz, _inputVolts) = (n, period.FrequencyHz, inputs[0]);
        BigMatrix given = new(p, 1);
        for (int k = 0; k < p; k++)
        {
            given[k, 0] = inputs[k];
        }

        Starts = [.. period.Instants().Select(instant => instant * given)];
        BigReal[] lengths = [.. network.Phases.Select(phase => phase.Duty / period.FrequencyHz)];
        _rates = [.. network.Phases.Select((phase, j) => phase.Rates.Above(new BigMatrix(p, n + p)).Times(lengths[j]))];
        _products = [.. _rates.Select((rates, j) => Products(rates, Starts[j]).Times(lengths[j]))];
        (int Even, int Early)[] needed = [.. _rates.Select(Needed)];
        SeesEveryTurn = needed.All(level => Math.Max(level.Even, level.Early) <= FinestGrid);
        _grids = new(() => [.. _rates.Select((rates, j) => Grid(rates, Starts[j], needed[j]))]);
    }

    /// <summary>Whether the times that extremes are looked for between are close enough for everything that rings.</summary>
    public bool SeesEveryTurn { get; }

    /// <summary>State and inputs at the start of every phase, then at the end of the last.</summary>
    public BigMatrix[] Starts { get; }

    /// <summary>The waveforms for given inputs.</summary>
    /// <param name="network">The network.</param>
    /// <param name="period">Its period.</param>
    /// <param name="inputs">Input voltage, not zero; output voltage or load current; further load currents.</param>
    public static PreciseWaves Of(PreciseNetwork network, PrecisePeriod period, params BigReal[] inputs) => new(network, period, inputs);

    /// <summary>The mean square over the period of a signal that is a row over state and inputs in every phase.</summary>
    public BigReal MeanSquare(Func<int, BigMatrix> row) =>
        _frequencyHz * _products.Select((w, j) => (row(j) * w * row(j).Transposed())[0, 0]).Aggregate((a, b) => a + b);

    /// <summary>The mean over the period of such a signal: the input voltage is one of the constant factors.</summary>
    public BigReal Mean(Func<int, BigMatrix> row) =>
        _frequencyHz * _products.Select((w, j) => (row(j) * w)[0, _inputAt]).Aggregate((a, b) => a + b) / _inputVolts;

    /// <summary>The least and the greatest value of such a signal over the period.</summary>
    public (BigReal Least, BigReal Greatest) Extremes(Func<int, BigMatrix> row)
    {
        BigReal? least = null, greatest = null;
        for (int j = 0; j < _rates.Length; j++)
        {
            BigMatrix own = row(j), slope = own * _rates[j];
            (BigMatrix[] maps, (int Level, BigMatrix Vector)[] steps) = _grids.Value[j];
            for (int k = 0; k < steps.Length; k++)
            {
                BigMatrix at = steps[k].Vector;
                Meet(at);
                if (k + 1 < steps.Length && IsRising(at) != IsRising(steps[k + 1].Vector))
                {
                    // halved until the turn is hemmed in
                    for (int level = steps[k].Level + 1; level < maps.Length; level++)
                    {
                        BigMatrix middle = maps[level] * at;
                        at = IsRising(middle) == IsRising(at) ? middle : at;
                    }

                    Meet(at);
                }
            }

            bool IsRising(BigMatrix vector) => (slope * vector)[0, 0] > default(BigReal);

            void Meet(BigMatrix vector)
            {
                BigReal value = (own * vector)[0, 0];
                least = least is { } l && l < value ? l : value;
                greatest = greatest is { } g && g > value ? g : value;
            }
        }

        return (least!.Value, greatest!.Value);
    }

    // The maps over 2^-level of a phase, and vectors in the order of time, each with the level of the step that follows it.
    private static (BigMatrix[] Maps, (int Level, BigMatrix Vector)[] Steps) Grid(BigMatrix rates, BigMatrix start, (int Even, int Early) needed)
    {
        (int coarsestLevel, int quarters) = needed;
        int finest = Math.Max(FinestLevel, rates.Squarings());
        var maps = new BigMatrix[finest + 1];
        maps[finest] = rates.Times(BigReal.Scale(BigReal.One, -finest)).Series();
        for (int level = finest; level > 0; level--)
        {
            maps[level - 1] = maps[level] * maps[level];
        }

        List<(int, BigMatrix)> steps = [(finest, start)];
        BigMatrix at = maps[finest] * start;
        for (int level = finest; level > coarsestLevel; level--)
        {
            // from 2^-level to 2^-(level - 1)
            int finer = Math.Min(finest, level + quarters);
            for (int k = 0; k < 1 << (finer - level); k++)
            {
                steps.Add((finer, at));
                at = maps[finer] * at;
            }
        }

        for (int k = 1; k < 1 << coarsestLevel; k++)
        {
            steps.Add((coarsestLevel, at));
            at = maps[coarsestLevel] * at;
        }

        steps.Add((coarsestLevel, at));
        return (maps, [.. steps]);
    }

    // The halvings of a phase, and of every halving towards its start, that leave 16 steps to a turn of what rings that long.
    private static (int Even, int Early) Needed(BigMatrix rates)
    {
        (int even, int early) = (CoarsestLevel, Quarters);
        Matrix<double> plain = Matrix<double>.Build.Dense(rates.Rows, rates.Columns, (r, c) => PrecisePorts.Nearest(rates[r, c]));
        foreach (Complex value in plain.Evd().EigenValues.Where(v => v.Imaginary > 0))
        {
            double life = value.Real < 0 ? Math.Min(1, LifeTimes / -value.Real) : 1, turns = value.Imaginary / (2 * Math.PI);
            even = life > Math.Pow(2, -CoarsestLevel) ? Math.Max(even, Level(turns)) : even;
            early = Math.Max(early, Level(turns * Math.Min(life, Math.Pow(2, -CoarsestLevel))));
        }

        return (even, early);

        static int Level(double turns) => (int)Math.Ceiling(Math.Log2(Math.Max(1, StepsPerTurn * turns)));
    }

    // over a phase whose length is one
    private static BigMatrix Products(BigMatrix rates, BigMatrix start)
    {
        int squarings = rates.Squarings();
        BigReal step = BigReal.Scale(BigReal.One, -squarings);
        BigMatrix across = rates.Transposed(), map = rates.Times(step).Series(), square = start * start.Transposed(), term = square.Times(step), sum = term;
        for (int k = 2; k < LargestTerm && !term.IsDust; k++)
        {
            term = ((rates * term) + (term * across)).Times(step / k);
            sum += term;
        }

        for (int k = 0; k < squarings; k++)
        {
            sum += map * sum * map.Transposed();
            map *= map;
        }

        return sum;
    }
}
