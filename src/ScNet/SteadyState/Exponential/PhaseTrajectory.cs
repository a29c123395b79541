using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>
/// The state over one phase at an operating point: at times close enough together to separate extremes, and the
/// integral of its products. Vectors are (x, u).
/// </summary>
/// <remarks>
/// Times lie evenly, and in equal proportion from a part of the fastest time constant on, so that what decays or rings
/// fast is met while it is large; and from each of them on over a turn of every ring that is faster than they follow one
/// another. Every part is worked out on first use.
/// </remarks>
internal sealed class PhaseTrajectory
{
    // of the fastest time constant, and how densely times follow one another
    private const double FirstTime = 0.1;
    private const int PointsPerOctave = 8;
    private const int EvenPoints = 64;

    // the series of the state over a time of half the inverse norm has this many terms to the last place of doubled precision
    private const int SeriesTerms = 26;
    private const double SeriesNorm = 0.5;

    private readonly PhaseEquations<DoubleDouble> _equations;
    private readonly int _n;
    private readonly DoubleDouble[] _start;
    private readonly Lazy<(double[] Times, DoubleDouble[][] Vectors)> _grid;
    private readonly Lazy<DoubleDouble[]> _products;
    private readonly Lazy<(RingSteps Steps, DoubleDouble[] Change)[]> _rings;

    public PhaseTrajectory(PhaseEquations<DoubleDouble> equations, DoubleDouble[] start, DoubleDouble[] end, DoubleDouble duration)
    {
        _equations = equations;
        _n = start.Length - equations.InputCount;
        _start = start;
        Start = start;
        End = end;
        Duration = duration;
        _grid = new(Sample);
        _products = new(Multiply);
        _rings = new(() => [.. RingSteps.Of(_equations, _n, Spacing, Duration.Nearest).Select(r => (r, ChangeOver(DoubleDouble.Of(r.Step))))]);
    }

    public DoubleDouble[] Start { get; }

    public DoubleDouble[] End { get; }

    public DoubleDouble Duration { get; }

    public double[] Times => _grid.Value.Times;

    public DoubleDouble[][] Vectors => _grid.Value.Vectors;

    /// <summary>The longest time between two samples in seconds.</summary>
    public double Spacing => Duration.Nearest / EvenPoints;

    /// <summary>A turn of the slowest ring that the samples alone would miss, in seconds; zero where there is none.</summary>
    public double TurnSeconds => _rings.Value is [(RingSteps slowest, _), ..] ? slowest.Step * slowest.Count : 0;

    /// <summary>The integral of z zᵀ over the phase.</summary>
    public DoubleDouble[] Products => _products.Value;

    /// <summary>The integral of z over the phase.</summary>
    public DoubleDouble[] Integral { get; private init; } = [];

    public static PhaseTrajectory Of(
        PhaseEquations<DoubleDouble> equations, DoubleDouble[] start, ReadOnlySpan<DoubleDouble> change, ReadOnlySpan<DoubleDouble> integral, DoubleDouble duration)
    {
        DoubleDouble[] end = Advanced(start, change), sums = new DoubleDouble[start.Length];
        int n = start.Length - equations.InputCount;
        for (int r = 0; r < start.Length; r++)
        {
            sums[r] = r < n ? SmallMatrices.Dot(integral.Slice(r * start.Length, start.Length), start) : start[r] * duration;
        }

        return new(equations, start, end, duration) { Integral = sums };
    }

    /// <summary>What a phase, or a part of it, makes of a vector.</summary>
    public static PhaseTrajectory From(PhaseEquations<DoubleDouble> equations, DoubleDouble[] start, DoubleDouble duration) =>
        new(equations, start, new PhaseTrajectory(equations, start, start, duration).From(start, duration), duration);

    /// <summary>The vector at a time in seconds from the start of the phase.</summary>
    public DoubleDouble[] At(double time)
    {
        if (time <= 0)
        {
            return _start;
        }

        // from the last sample before it, so that only a short time is bridged
        int before = Array.BinarySearch(Times, time);
        before = before < 0 ? ~before - 1 : before;
        return From(Vectors[before], DoubleDouble.Of(time) - DoubleDouble.Of(Times[before]));
    }

    /// <summary>The vectors over one turn of every fast ring from a time on, within the phase.</summary>
    public IEnumerable<(double Time, DoubleDouble[] Vector)> Turn(double time) => Turn(time, At(time), 0, Duration.Nearest);

    /// <summary>The row of the derivative of a row's signal.</summary>
    public DoubleDouble[] Derivative(ReadOnlySpan<DoubleDouble> row)
    {
        var derivative = new DoubleDouble[row.Length];
        for (int x = 0; x < _n; x++)
        {
            SmallMatrices.AddMultiple<DoubleDouble>(_equations.Generator.AsSpan(x * row.Length, row.Length), row[x], derivative);
        }

        return derivative;
    }

    private DoubleDouble[] From(DoubleDouble[] vector, DoubleDouble time) => Advanced(vector, ChangeOver(time));

    private DoubleDouble[] ChangeOver(DoubleDouble time)
    {
        int width = _start.Length;
        DoubleDouble[] change = new DoubleDouble[_n * width], integral = new DoubleDouble[_n * width];
        PhaseExponential.Of<DoubleDouble>(_n, width, _equations.Generator, _equations.Norm, time, change, integral, new DoubleDouble[PhaseExponential.Room(_n, width)]);
        return change;
    }

    private static DoubleDouble[] Advanced(DoubleDouble[] vector, ReadOnlySpan<DoubleDouble> change)
    {
        DoubleDouble[] next = [.. vector];
        for (int r = 0; r < change.Length / vector.Length; r++)
        {
            next[r] += SmallMatrices.Dot(change.Slice(r * vector.Length, vector.Length), vector);
        }

        return next;
    }

    private (double[] Times, DoubleDouble[][] Vectors) Sample()
    {
        double duration = Duration.Nearest;
        SortedDictionary<double, DoubleDouble[]> samples = new() { [0] = _start, [duration] = End };
        DoubleDouble step = Duration * DoubleDouble.Of(1.0 / EvenPoints);
        DoubleDouble[] change = ChangeOver(step), vector = _start;
        for (int k = 1; k < EvenPoints; k++)
        {
            vector = Advanced(vector, change);
            samples[k * step.Nearest] = vector;
        }

        double first = FirstTime / Math.Max(_equations.Norm, 1 / duration);
        for (int part = 0; part < PointsPerOctave; part++)
        {
            double time = first * Math.Pow(2, (double)part / PointsPerOctave);
            change = ChangeOver(DoubleDouble.Of(time));
            for (; time < step.Nearest; time *= 2)
            {
                samples[time] = Advanced(_start, change);
                PhaseExponential.Double<DoubleDouble>(_n, _start.Length, change);
            }
        }

        if (_rings.Value.Length > 0)
        {
            foreach ((double time, DoubleDouble[] from) in samples.ToArray())
            {
                foreach ((double place, DoubleDouble[] value) in Turn(time, from, 0, duration))
                {
                    samples[place] = value;
                }
            }
        }

        return ([.. samples.Keys], [.. samples.Values]);
    }

    // every ring turns while those slower than it stand nearly still
    private IEnumerable<(double Time, DoubleDouble[] Vector)> Turn(double time, DoubleDouble[] vector, int level, double end)
    {
        if (level == _rings.Value.Length)
        {
            yield return (time, vector);
            yield break;
        }

        (RingSteps steps, DoubleDouble[] change) = _rings.Value[level];
        int count = time < steps.Life ? steps.Count : 0;
        for (int k = 0; k <= count && (k == 0 || time + (k * steps.Step) < end); k++)
        {
            vector = k == 0 ? vector : Advanced(vector, change);
            double next = k < count ? Math.Min(end, time + ((k + 1) * steps.Step)) : end;
            foreach ((double Time, DoubleDouble[] Vector) faster in Turn(time + (k * steps.Step), vector, level + 1, next))
            {
                yield return faster;
            }
        }
    }

    // ∫ z zᵀ over a short time by the series of z, then doubled: W(2t) = W(t) + Φ(t) W(t) Φ(t)ᵀ
    private DoubleDouble[] Multiply()
    {
        int width = _start.Length;
        double norm = _equations.Norm * Duration.Nearest;
        int doublings = norm > SeriesNorm ? (int)Math.Ceiling(Math.Log2(norm / SeriesNorm)) : 0;
        DoubleDouble step = Duration * DoubleDouble.Of(Math.ScaleB(1, -doublings));
        DoubleDouble[] sums = ShortProducts(step), change = ChangeOver(step);
        for (int k = 0; k < doublings; k++)
        {
            DoubleDouble[] left = [.. sums];
            SmallMatrices.AddProduct<DoubleDouble>(change, width, width, sums, width, left.AsSpan(0, _n * width));
            for (int r = 0; r < width; r++)
            {
                Advanced(left[(r * width)..((r + 1) * width)], change).AsSpan().CopyTo(left.AsSpan(r * width));
            }

            SmallMatrices.AddMultiple<DoubleDouble>(left, DoubleDouble.Of(1), sums);
            PhaseExponential.Double<DoubleDouble>(_n, width, change);
        }

        return sums;
    }

    private DoubleDouble[] ShortProducts(DoubleDouble step)
    {
        int width = _start.Length;
        var terms = new DoubleDouble[SeriesTerms][];
        terms[0] = _start;
        for (int k = 1; k < SeriesTerms; k++)
        {
            terms[k] = new DoubleDouble[width];
            DoubleDouble factor = step / DoubleDouble.Of(k);
            for (int r = 0; r < _n; r++)
            {
                terms[k][r] = factor * SmallMatrices.Dot<DoubleDouble>(_equations.Generator.AsSpan(r * width, width), terms[k - 1]);
            }
        }

        var sums = new DoubleDouble[width * width];
        for (int k = 0; k < SeriesTerms; k++)
        {
            for (int l = 0; l < SeriesTerms; l++)
            {
                DoubleDouble factor = step / DoubleDouble.Of(k + l + 1);
                for (int r = 0; r < width; r++)
                {
                    SmallMatrices.AddMultiple<DoubleDouble>(terms[l], factor * terms[k][r], sums.AsSpan(r * width, width));
                }
            }
        }

        return sums;
    }
}
