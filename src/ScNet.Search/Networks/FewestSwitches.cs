namespace ScNet.Search.Networks;

/// <summary>The fewest switches that make given wirings, of any phases; proved, see <see cref="SwitchSharing"/>.</summary>
internal static class FewestSwitches
{
    /// <summary>What is returned where there are more than are of interest.</summary>
    public const int TooMany = int.MaxValue;

    /// <summary>Their number.</summary>
    /// <param name="phases">The wirings.</param>
    /// <param name="sharing">Of as many phases.</param>
    /// <param name="most">More are of no interest.</param>
    public static int Count(ReadOnlySpan<Wiring> phases, SwitchSharing sharing, int most = TooMany)
    {
        Span<int> points = stackalloc int[phases[0].TerminalCount];
        int count = 0;
        for (int t = 0; t < points.Length; t++)
        {
            bool isNew = true;
            for (int p = 0; p < count; p++)
            {
                isNew &= Common(phases, points[p], t) != (1 << phases.Length) - 1;
            }

            if (isNew)
            {
                points[count++] = t;
            }
        }

        sharing.Start(count);
        for (int second = 1; second < count; second++)
        {
            for (int first = 0; first < second; first++)
            {
                sharing.Add(first, second, Common(phases, points[first], points[second]));
            }
        }

        int alone = 0;
        foreach (Wiring phase in phases)
        {
            alone += count - phase.NodeCount;
        }

        int least = most == TooMany ? 0 : Math.Max(0, alone - most), saved = sharing.Most(least: least);
        return saved < least ? TooMany : alone - saved;
    }

    /// <summary>A bit per phase that joins two terminals.</summary>
    public static int Common(ReadOnlySpan<Wiring> phases, int first, int second)
    {
        int common = 0;
        for (int phase = 0; phase < phases.Length; phase++)
        {
            common |= phases[phase].Joins(first, second) ? 1 << phase : 0;
        }

        return common;
    }
}
