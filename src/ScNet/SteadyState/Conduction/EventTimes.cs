using MathNet.Numerics.RootFinding;
using ScNet.Numerics;

namespace ScNet.SteadyState.Conduction;

/// <summary>The times at which inductor currents end phases: shares of these phases at which the currents are zero.</summary>
/// <remarks>
/// The first zero of a current lies beyond a time in which nothing can ring, or alone before it; from there shares are doubled until
/// the current is past zero. What rings about a current of its own may be back above zero by then: a current that is positive at all
/// of these is looked for once more at even shares. One event is then bracketed (R. P. Brent 1973, from memory); several are found
/// together by Newton's iteration with differences on the exact maps.
/// </remarks>
internal static class EventTimes
{
    private const double LeastShare = 1e-9;
    private const double ShareTolerance = 1e-17;
    private const double CurrentTolerance = 1e-14;
    private const double DifferenceShare = 1e-8;
    private const int StepLimit = 100;
    private const int EvenShares = 64;

    /// <summary>Finds the shares.</summary>
    /// <param name="count">The number of events.</param>
    /// <param name="currents">For shares of the phases, the current of each event's inductor at its end, positive before it ends; null where there is no periodic state.</param>
    /// <param name="first">For each event the share of its phase in which nothing rings.</param>
    /// <param name="late">Receives the event whose current is not zero before its phase ends, or -1.</param>
    /// <returns>The shares, or null where there are none.</returns>
    public static double[]? Find(int count, Func<double[], double[]?> currents, double[] first, out int late)
    {
        late = -1;
        if (count > 1)
        {
            return Several(currents, first, ref late);
        }

        if (Bracket(At, first[0]) is not var (low, high))
        {
            late = 0;
            return null;
        }

        return At(low) >= 0 && Brent.TryFindRoot(At, low, high, ShareTolerance, StepLimit, out double share) ? [share] : null;

        double At(double share) => currents([share]) is [var current] ? current : double.NaN;
    }

    // Shares between which the current first passes zero; null where it does not.
    private static (double Low, double High)? Bracket(Func<double, double> current, double first)
    {
        double low = LeastShare;
        for (double high = Math.Max(first, 2 * LeastShare); ; high *= 2)
        {
            high = Math.Min(high, 1);
            if (!(current(high) >= 0))
            {
                return (low, high);
            }

            if (high == 1)
            {
                return Dip(current);
            }

            low = high;
        }
    }

    // Shares between which a current falls below zero that is above it at all the shares that were doubled; null where none is found.
    private static (double Low, double High)? Dip(Func<double, double> current)
    {
        double low = LeastShare;
        for (int k = 1; k < EvenShares; k++)
        {
            double high = (double)k / EvenShares;
            if (current(high) < 0)
            {
                return (low, high);
            }

            low = high;
        }

        return null;
    }

    private static double[]? Several(Func<double[], double[]?> currents, double[] first, ref int late)
    {
        int count = first.Length;
        double[] shares = [.. Enumerable.Repeat(1.0, count)];
        for (int k = 0; k < count; k++)
        {
            int own = k;
            shares[k] = Bracket(share => currents([.. shares.Select((s, l) => l == own ? share : s)]) is { } found ? found[own] : double.NaN, first[k]) is var (_, high) ? high : 1;
        }

        var rows = new PlainReal[count * (count + 1)];
        for (int step = 0; step < StepLimit; step++)
        {
            if (currents(shares) is not { } now)
            {
                return null;
            }

            if (now.All(c => Math.Abs(c) <= CurrentTolerance))
            {
                return shares;
            }

            for (int k = 0; k < count; k++)
            {
                double[] moved = [.. shares];
                moved[k] *= 1 - DifferenceShare;
                if (currents(moved) is not { } then)
                {
                    return null;
                }

                for (int r = 0; r < count; r++)
                {
                    rows[(r * (count + 1)) + k] = PlainReal.Of((now[r] - then[r]) / (shares[k] - moved[k]));
                    rows[(r * (count + 1)) + count] = PlainReal.Of(now[r]);
                }
            }

            if (!SmallMatrices.TrySolve<PlainReal>(rows, count, count + 1, new double[count]))
            {
                return null;
            }

            bool hasMoved = false;
            for (int k = 0; k < count; k++)
            {
                double next = Math.Clamp(shares[k] - rows[(k * (count + 1)) + count].Nearest, 0.25 * shares[k], 1);
                hasMoved |= next != shares[k];
                late = next == 1 && shares[k] == 1 && now[k] > 0 ? k : late;
                shares[k] = next;
            }

            if (late >= 0)
            {
                return null;
            }

            if (!hasMoved)
            {
                return shares;
            }
        }

        return null;
    }
}
