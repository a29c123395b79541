using ScNet.Design.Regulation;

namespace ScNet.Design.Maps;

/// <summary>How many modes are worth it: the best set of each number, to see where one more stops paying.</summary>
/// <remarks>Cost: the number of sets tried times that of points and modes. Derivation: docs/theory/maps.md.</remarks>
public static class GearCounts
{
    private const long MostSets = 20_000;

    /// <summary>The best set of one mode, of two, and so on to all that are given; sets that hold more points come first, then those that lose less.</summary>
    /// <param name="map">The map, whose modes are chosen from.</param>
    /// <param name="cancellationToken">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">It was ended early.</exception>
    public static IReadOnlyList<GearCount> Of(OperatingMap map, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(map);
        double[][] inputWatts = [.. map.Modes.Select(m => InputWatts(map, m))];
        double[] outputWatts = [.. map.Points.Select(p => p.OutputVolts * p.LoadAmperes)];
        List<GearCount> counts = [];
        int[] before = [];
        for (int count = 1; count <= map.Modes.Count; count++)
        {
            bool isCertain = Sets(map.Modes.Count, count) <= MostSets;
            int[] used = before;
            IEnumerable<int[]> sets = isCertain ? Subsets(map.Modes.Count, count)
                : Enumerable.Range(0, map.Modes.Count).Except(used).Select(m => (int[])[.. used.Append(m).Order()]);
            (int Held, double Efficiency) best = (-1, 0);
            foreach (int[] set in sets)
            {
                cancellationToken.ThrowIfCancellationRequested();
                (int Held, double Efficiency) own = Measure(set, inputWatts, outputWatts);
                if (own.CompareTo(best) > 0)
                {
                    (best, before) = (own, set);
                }
            }

            counts.Add(new(
                [.. before.Select(m => map.Modes[m])], best.Held / (double)map.Count, best.Held > 0 ? best.Efficiency : null, isCertain));
        }

        return [.. counts];
    }

    private static (int Held, double Efficiency) Measure(int[] set, double[][] inputWatts, double[] outputWatts)
    {
        int held = 0;
        double input = 0, output = 0;
        for (int p = 0; p < outputWatts.Length; p++)
        {
            double least = double.PositiveInfinity;
            foreach (int m in set)
            {
                least = Math.Min(least, inputWatts[m][p]);
            }

            if (double.IsFinite(least))
            {
                held++;
                input += least;
                output += outputWatts[p];
            }
        }

        return (held, held > 0 ? output / input : 0);
    }

    // infinite where it does not hold
    private static double[] InputWatts(OperatingMap map, RegulatedMode mode) => [.. map.Points.Select(
        p => mode.Hold(p.InputVolts, p.OutputVolts, p.LoadAmperes) is { IsHeld: true } held ? held.InputWatts : double.PositiveInfinity)];

    private static double Sets(int count, int size) => Enumerable.Range(1, size).Aggregate(1.0, (product, k) => product * (count - size + k) / k);

    private static IEnumerable<int[]> Subsets(int count, int size) => size == 0 ? [[]]
        : Enumerable.Range(size - 1, count - size + 1).SelectMany(last => Subsets(last, size - 1).Select(s => (int[])[.. s, last]));
}
