using System.Globalization;

namespace ScNet.Mutants;

/// <summary>What is done in a process of its own, since a mutant may end it.</summary>
internal static class Work
{
    public const string CoverVerb = "cover", TryVerb = "work";

    /// <summary>The exit code of a process that ran out of processor time.</summary>
    public const int TimedOut = 3;

    // beyond half as long again as a test takes unchanged
    private const double ExtraSeconds = 5;

    private static double s_limitSeconds = double.MaxValue;
    private static long s_limitTicks = long.MaxValue;

    /// <summary>Finds what each test reaches and how long it takes.</summary>
    public static int Cover(string folder)
    {
        Plan plan = Plan.Read(folder);
        RoomTest[] tests = RoomTest.Of(plan.Room);
        MutatedLibrary.Set(-1);
        MutatedLibrary.Capture(true);
        Dictionary<int, List<int>> reachedBy = [];
        bool passes = true;
        for (int t = 0; t < tests.Length; t++)
        {
            passes &= Passes(tests[t]);
            (IEnumerable<int> all, IEnumerable<int> @static) = MutatedLibrary.Reached();
            foreach (int mutant in all)
            {
                reachedBy.TryAdd(mutant, []);
                reachedBy[mutant].Add(t);
            }

            plan.Static.UnionWith(@static);
        }

        MutatedLibrary.Capture(false);
        foreach (RoomTest test in tests)
        {
            TimeSpan before = Environment.CpuUsage.TotalTime;
            passes &= Passes(test);
            plan.Names.Add(test.Name);
            plan.Seconds.Add((Environment.CpuUsage.TotalTime - before).TotalSeconds);
        }

        foreach ((int mutant, List<int> by) in reachedBy)
        {
            plan.TestsOf[mutant] = [.. by.OrderBy(t => plan.Seconds[t])];
        }

        plan.Write(folder);
        return passes ? 0 : 1;
    }

    /// <summary>Tries the mutants of WORKER.todo one after the other and writes what becomes of each to WORKER.done; one that is reached while something is set up once, in a process that nothing ran in before.</summary>
    public static int Try(string folder, string worker)
    {
        Plan plan = Plan.Read(folder);
        RoomTest[] tests = RoomTest.Of(plan.Room);
        int[] mutants = [.. File.ReadLines(Path.Combine(folder, worker + ".todo")).Select(int.Parse)];
        using StreamWriter done = new(Path.Combine(folder, worker + ".done")) { AutoFlush = true };
        MutatedLibrary.Set(-1);
        bool isAlone = plan.Static.Overlaps(mutants);
        using Timer watch = Watch();
        if (!isAlone)
        {
            // what is set up once, by the library or by a test for itself, is set up by the unchanged library
            for (int t = 0; t < tests.Length; t++)
            {
                _ = plan.Seconds[t] > 0.5 || Passes(tests[t]);
            }
        }

        List<int> killers = [];
        foreach (int mutant in mutants)
        {
            int[] by = Affordable(plan, killers.Intersect(plan.TestsOf[mutant]).Concat(plan.TestsOf[mutant]).Concat(plan.Static.Contains(mutant) ? Enumerable.Range(0, tests.Length) : []));
            done.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{mutant}"));
            MutatedLibrary.Set(mutant);
            int killer = Array.FindIndex(by, t => !Passes(tests[t], plan.Seconds[t]));
            MutatedLibrary.Set(-1);
            done.WriteLine(killer < 0 ? "Survived" : $"Killed\t{tests[by[killer]].Name}");
            Remember(killers, killer < 0 ? null : by[killer]);
        }

        // what a mutant left behind would have been held against those after it
        string[] broken = !isAlone ? [.. tests.Where((t, k) => plan.Seconds[k] <= 0.5 && !Passes(t)).Select(t => t.Name)] : [];
        done.WriteLine(broken.Length == 0 ? "Clean" : $"Unclean\t{string.Join(", ", broken)}");
        return 0;
    }

    // of each test once, as many as the room has time for
    private static int[] Affordable(Plan plan, IEnumerable<int> tests)
    {
        double seconds = 0;
        return [.. tests.Distinct().TakeWhile(t => (seconds += plan.Seconds[t]) <= (plan.Room.Seconds ?? double.MaxValue))];
    }

    // what noticed the last mutants is asked first about the next, which is nearby; the last in front
    private static void Remember(List<int> killers, int? killer)
    {
        if (killer is { } test)
        {
            killers.Remove(test);
            killers.Insert(0, test);
            killers.RemoveRange(Math.Min(killers.Count, 6), Math.Max(0, killers.Count - 6));
        }
    }

    // by the processor's clock, since others may use the machine; the other clock is for what waits for ever
    private static Timer Watch() => new(
        _ =>
        {
            if (Environment.CpuUsage.TotalTime.TotalSeconds > Volatile.Read(ref s_limitSeconds) || Environment.TickCount64 > Volatile.Read(ref s_limitTicks))
            {
                Environment.Exit(TimedOut);
            }
        },
        null,
        250,
        250);

    private static bool Passes(RoomTest test, double seconds)
    {
        double extra = (1.5 * seconds) + ExtraSeconds;
        Volatile.Write(ref s_limitTicks, Environment.TickCount64 + (long)(1000 * (60 + (20 * extra))));
        Volatile.Write(ref s_limitSeconds, Environment.CpuUsage.TotalTime.TotalSeconds + extra);
        bool passes = Passes(test);
        Volatile.Write(ref s_limitSeconds, double.MaxValue);
        Volatile.Write(ref s_limitTicks, long.MaxValue);
        return passes;
    }

    private static bool Passes(RoomTest test)
    {
        try
        {
            test.Run();
            return true;
        }
        catch (Exception exception)
        {
            if (Environment.GetEnvironmentVariable("SCNET_MUTANTS_TELL") is { Length: > 0 })
            {
                Console.Error.WriteLine($"{test.Name}: {exception.Message}");
            }

            return false;
        }
    }
}
