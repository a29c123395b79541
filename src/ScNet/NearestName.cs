namespace ScNet;

/// <summary>What somebody meant who wrote a name that does not exist.</summary>
internal static class NearestName
{
    private const int MaximumLength = 32;

    /// <summary>The known name that an unknown one most likely stands for, or null.</summary>
    public static string? Of(string name, IEnumerable<string> known)
    {
        if (name.Length is 0 or > MaximumLength)
        {
            return null;
        }

        string? nearest = null;
        int least = int.MaxValue;
        foreach (string candidate in known)
        {
            int most = Math.Max(1, candidate.Length / 3);
            int distance = Math.Min(name.Length, candidate.Length) > 2
                && (candidate.StartsWith(name, StringComparison.OrdinalIgnoreCase) || name.StartsWith(candidate, StringComparison.OrdinalIgnoreCase))
                ? 1
                // no fewer edits than the lengths differ by; a name may be a million characters long
                : Math.Abs(name.Length - candidate.Length) > most ? int.MaxValue
                : Distance(name, candidate);
            if (distance < least && distance <= most)
            {
                least = distance;
                nearest = candidate;
            }
        }

        return nearest;
    }

    // edits (replace, insert, delete, swap of neighbours) between two short words, without regard to case;
    // the optimal string alignment distance
    private static int Distance(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    d[i, j] = i + j;
                    continue;
                }

                int change = Same(a[i - 1], b[j - 1]) ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j], d[i, j - 1]) + 1, d[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }

    private static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
}
