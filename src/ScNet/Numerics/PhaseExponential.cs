namespace ScNet.Numerics;

/// <summary>
/// What x' = A x + b u with constant u does over a time t: the change of x and the integral of x, as matrices over
/// (x, u). The identity is never added, so that what hardly moves is as accurate as what moves fast.
/// </summary>
/// <remarks>
/// With P the integral of the exponential and E = exp(A t) − 1, a power series for a short time and doubling:
/// P(2t) = 2 P + E P, E(2t) = 2 E + E E. Derived in docs/theory/two-port.md. The series is summed in blocks of powers
/// (M. S. Paterson and L. J. Stockmeyer, SIAM Journal on Computing 2, 1973, from memory). Cost: two products of
/// matrices per doubling, and some eight before. Rows have n + m entries; the constant rows of u are left out.
/// </remarks>
internal static class PhaseExponential
{
    // powers summed at once, and the norm up to which the series of block · parts terms is exact to rounding
    private static readonly (int Block, int Parts, double Norm)[] s_plain = [(2, 2, 6e-5), (3, 3, 0.065), (3, 4, 0.25), (4, 4, 0.7)];
    private static readonly (int Block, int Parts, double Norm)[] s_fine = [(3, 3, 1e-4), (4, 4, 0.05), (5, 5, 0.55)];

    private const int LargestBlock = 5;

    /// <summary>How many numbers of room <see cref="Of"/> takes for n states and rows of a width.</summary>
    public static int Room(int n, int width) => (LargestBlock + 2) * n * width;

    /// <summary>Finds change and integral.</summary>
    /// <param name="n">The number of states.</param>
    /// <param name="width">n and the number of inputs.</param>
    /// <param name="generator">[A b], n rows.</param>
    /// <param name="norm">The <see cref="Norm"/> of A.</param>
    /// <param name="time">The time.</param>
    /// <param name="change">Receives [E, P b]: the change of x.</param>
    /// <param name="integral">Receives [P, Q b]: the integral of x, with Q the integral of P.</param>
    /// <param name="room">Room for <see cref="Room"/> numbers.</param>
    public static void Of<T>(int n, int width, ReadOnlySpan<T> generator, double norm, T time, Span<T> change, Span<T> integral, Span<T> room)
        where T : struct, IReal<T>
    {
        if (n == 0)
        {
            return;
        }

        int size = n * width;
        (int block, int parts, int doublings) = Plan(T.Rounding < PlainReal.Rounding ? s_fine : s_plain, norm * time.Nearest);
        T step = time * T.Of(Math.ScaleB(1, -doublings));
        Span<T> spare = room.Slice(block * size, size);
        for (int k = 0; k < size; k++)
        {
            room[k] = generator[k] * step;
        }

        for (int k = 1; k < block; k++)
        {
            Multiply(n, width, room[..size], room.Slice((k - 1) * size, size), default, room.Slice(k * size, size));
        }

        Series(n, width, (block, parts), room, integral[..size], spare);
        Multiply(n, width, room[..size], integral[..size], T.Of(1), change[..size]);
        T passed = T.Of(1);
        for (int k = 0; k < doublings; k++)
        {
            Double(n, width, change[..size], integral[..size], passed, spare);
            Double(n, width, change[..size], change[..size], default, spare);
            passed += passed;
        }

        for (int k = 0; k < size; k++)
        {
            integral[k] *= step;
        }
    }

    /// <summary>The change [E, P b] over twice the time, in place.</summary>
    public static void Double<T>(int n, int width, Span<T> change)
        where T : struct, IReal<T> => Double<T>(n, width, change, change, default, new T[change.Length]);

    /// <summary>The smaller of the largest sums of a row and of a column of A.</summary>
    public static double Norm<T>(ReadOnlySpan<T> generator, int n, int width)
        where T : struct, IReal<T>
    {
        double byRows = 0, byColumns = 0;
        for (int r = 0; r < n; r++)
        {
            double row = 0, column = 0;
            for (int c = 0; c < n; c++)
            {
                row += Math.Abs(generator[(r * width) + c].Nearest);
                column += Math.Abs(generator[(c * width) + r].Nearest);
            }

            (byRows, byColumns) = (Math.Max(byRows, row), Math.Max(byColumns, column));
        }

        return Math.Min(byRows, byColumns);
    }

    // How many powers are summed at once, in how many parts, and how often the time is doubled.
    private static (int Block, int Parts, int Doublings) Plan((int Block, int Parts, double Norm)[] series, double norm)
    {
        foreach ((int block, int parts, double limit) in series)
        {
            if (norm <= limit)
            {
                return (block, parts, 0);
            }
        }

        return (series[^1].Block, series[^1].Parts, (int)Math.Ceiling(Math.Log2(norm / series[^1].Norm)));
    }

    // Σ G^k / (k + 1)! from powers 1 to block of G, block · parts terms, by Horner's rule in G^block
    private static void Series<T>(int n, int width, (int Block, int Parts) terms, ReadOnlySpan<T> powers, Span<T> sum, Span<T> spare)
        where T : struct, IReal<T>
    {
        int size = n * width, block = terms.Block;
        T constant = default;
        sum.Clear();
        for (int part = terms.Parts - 1; part >= 0; part--)
        {
            if (part < terms.Parts - 1)
            {
                Multiply(n, width, powers.Slice((block - 1) * size, size), sum, constant, spare);
                spare[..size].CopyTo(sum);
            }

            constant = Coefficient<T>(part * block);
            for (int r = 0; r < n; r++)
            {
                sum[(r * width) + r] += constant;
            }

            for (int k = 1; k < block; k++)
            {
                SmallMatrices.AddMultiple(powers.Slice((k - 1) * size, size), Coefficient<T>((part * block) + k), sum);
            }
        }
    }

    private static T Coefficient<T>(int k)
        where T : struct, IReal<T> => Coefficients<T>.Values[k];

    // left times right, whose rows of u are a constant times the identity
    private static void Multiply<T>(int n, int width, ReadOnlySpan<T> left, ReadOnlySpan<T> right, T constant, Span<T> target)
        where T : struct, IReal<T>
    {
        target.Clear();
        SmallMatrices.AddProduct(left, width, n, right, width, target);
        AddInputs(n, width, left, constant, target);
    }

    // right becomes 2 right + change right
    private static void Double<T>(int n, int width, ReadOnlySpan<T> change, Span<T> right, T constant, Span<T> spare)
        where T : struct, IReal<T>
    {
        for (int k = 0; k < right.Length; k++)
        {
            spare[k] = right[k] + right[k];
        }

        SmallMatrices.AddProduct<T>(change, width, n, right, width, spare[..right.Length]);
        AddInputs(n, width, change, constant, spare);
        spare[..right.Length].CopyTo(right);
    }

    private static void AddInputs<T>(int n, int width, ReadOnlySpan<T> left, T constant, Span<T> target)
        where T : struct, IReal<T>
    {
        if (!constant.IsZero)
        {
            for (int r = 0; r < n; r++)
            {
                for (int c = n; c < width; c++)
                {
                    target[(r * width) + c] += left[(r * width) + c] * constant;
                }
            }
        }
    }

    private static class Coefficients<T>
        where T : struct, IReal<T>
    {
        public static readonly T[] Values = Make();

        private static T[] Make()
        {
            var values = new T[LargestBlock * LargestBlock];
            T factorial = T.Of(1);
            for (int k = 0; k < values.Length; k++)
            {
                factorial *= T.Of(k + 1);
                values[k] = T.Of(1) / factorial;
            }

            return values;
        }
    }
}
