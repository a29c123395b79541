namespace ScNet.Netlists.Documents;

/// <summary>The keys of the document, and the nearest of them to one that it does not have.</summary>
internal static class NetlistKeys
{
    public const string Name = "name";
    public const string Input = "input";
    public const string Output = "output";
    public const string Load = "load";
    public const string Phases = "phases";
    public const string Count = "count";
    public const string Duty = "duty";
    public const string Names = "names";
    public const string Capacitors = "capacitors";
    public const string Switches = "switches";
    public const string Modes = "modes";
    public const string Between = "between";
    public const string Farads = "farads";
    public const string EsrOhms = "esr_ohms";
    public const string Ohms = "ohms";
    public const string On = "on";

    private const int MaximumLength = 32;

    public static readonly string[] Root = [Name, Input, Output, Load, Phases, Capacitors, Switches, Modes];
    public static readonly string[] Phase = [Count, Duty, Names];
    public static readonly string[] Capacitor = [Between, Farads, EsrOhms];
    public static readonly string[] Switch = [Between, Ohms, On];

    /// <summary>The known key that an unknown one most likely stands for, or null.</summary>
    public static string? Nearest(string key, string[] known)
    {
        if (key.Length is 0 or > MaximumLength)
        {
            return null;
        }

        string? nearest = null;
        int least = int.MaxValue;
        foreach (string candidate in known)
        {
            int distance = Math.Min(key.Length, candidate.Length) > 2
                && (candidate.StartsWith(key, StringComparison.OrdinalIgnoreCase) || key.StartsWith(candidate, StringComparison.OrdinalIgnoreCase))
                ? 1
                : Distance(key, candidate);
            if (distance < least && distance <= Math.Max(1, candidate.Length / 3))
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
