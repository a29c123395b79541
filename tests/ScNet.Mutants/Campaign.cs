using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace ScNet.Mutants;

/// <summary>Tries every mutant of a report on the tests that reach it and writes what became of it into the report.</summary>
/// <remarks>
/// A process tries one mutant after the other, up to the first test that fails. Those that are reached while something is set up once are
/// tried each in a process of its own.
/// </remarks>
internal static class Campaign
{
    private static readonly int s_workers = Math.Max(1, Environment.ProcessorCount);
    private static readonly JsonSerializerOptions s_plain = new() { WriteIndented = false };

    public static int Run(RoomTests room, string report, string folder)
    {
        JsonNode root = JsonNode.Parse(File.ReadAllText(report))!;
        Dictionary<int, JsonNode> mutants = root["files"]!.AsObject()
            .Where(f => !f.Key.EndsWith("Idle.cs", StringComparison.Ordinal)) // where the test of Stryker's own run ends
            .SelectMany(f => f.Value!["mutants"]!.AsArray())
            .Where(m => (string)m!["status"]! is not ("Ignored" or "CompileError"))
            .ToDictionary(m => int.Parse((string)m!["id"]!, CultureInfo.InvariantCulture), m => m!);
        LeaveOut(mutants);
        new Plan(room).Write(folder);
        if (Start(Work.CoverVerb, folder) != 0)
        {
            throw new InvalidDataException("Tests fail on the unchanged library, see above; with SCNET_MUTANTS_TELL=1 in the environment they say why.");
        }

        Plan plan = Plan.Read(folder);
        int[] reached = [.. mutants.Keys.Where(plan.TestsOf.ContainsKey).Order()];
        Console.WriteLine($"{mutants.Count} mutants, {reached.Length} reached by {plan.Names.Count} tests of {plan.Seconds.Sum():F1} s.");
        ConcurrentDictionary<int, string> outcomes = [];
        int[] together = [.. reached.Where(m => !plan.Static.Contains(m))];
        Parallel.For(0, s_workers, Workers, w => TryAll(folder, $"{w}", [.. together.Where((_, k) => k % s_workers == w)], outcomes));
        Parallel.ForEach(reached.Where(plan.Static.Contains), Workers, m => TryAll(folder, $"alone-{m}", [m], outcomes));
        foreach ((int id, JsonNode mutant) in mutants)
        {
            string[] outcome = outcomes.GetValueOrDefault(id, "NoCoverage").Split('\t');
            mutant["status"] = outcome[0];
            mutant["statusReason"] = outcome.ElementAtOrDefault(1) ?? "";
        }

        File.WriteAllText(report, root.ToJsonString(s_plain));
        return 0;
    }

    // an estimate tries every so manieth alone, in the order of the files
    private static void LeaveOut(Dictionary<int, JsonNode> mutants)
    {
        int every = Environment.GetEnvironmentVariable("SCNET_MUTANTS_EVERY") is { Length: > 0 } text ? int.Parse(text, CultureInfo.InvariantCulture) : 1;
        foreach (int id in mutants.Keys.Order().Where((_, at) => at % every > 0).ToArray())
        {
            mutants[id]["status"] = "Ignored";
            mutants.Remove(id);
        }
    }

    private static ParallelOptions Workers => new() { MaxDegreeOfParallelism = s_workers };

    private static void TryAll(string folder, string worker, int[] todo, ConcurrentDictionary<int, string> outcomes)
    {
        while (todo.Length > 0)
        {
            File.WriteAllLines(Path.Combine(folder, worker + ".todo"), todo.Select(m => m.ToString(CultureInfo.InvariantCulture)));
            int code = Start(Work.TryVerb, folder, worker);
            string[] done = File.ReadAllLines(Path.Combine(folder, worker + ".done"));
            int tried = 0;
            for (; (2 * tried) + 1 < done.Length; tried++)
            {
                outcomes[int.Parse(done[2 * tried], CultureInfo.InvariantCulture)] = done[(2 * tried) + 1];
            }

            if (code == 0)
            {
                Console.WriteLine(todo.Length > 1 ? $"Worker {worker}: {done[^1]}" : $"Mutant {todo[0]}: {done[^2]}");
                return;
            }

            if (done.Length % 2 == 0)
            {
                throw new InvalidDataException($"Worker {worker} ended with {code} before it tried a mutant.");
            }

            outcomes[todo[tried]] = code == Work.TimedOut ? "Timeout" : $"Killed\tthe process ended with {code}";
            todo = todo[(tried + 1)..];
        }
    }

    private static int Start(params string[] arguments)
    {
        // a process that ends for want of a stack tells all of it
        bool isQuiet = arguments[0] == Work.TryVerb;
        using Process process = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, arguments) { RedirectStandardError = isQuiet })!;
        if (isQuiet)
        {
            process.StandardError.BaseStream.CopyTo(Stream.Null);
        }

        process.WaitForExit();
        return process.ExitCode;
    }
}
