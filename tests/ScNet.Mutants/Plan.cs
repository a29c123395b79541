using System.Text.Json;

namespace ScNet.Mutants;

/// <summary>What the processes of a campaign hand to one another, as files of one folder.</summary>
internal sealed record Plan(RoomTests Room)
{
    /// <summary>Names of the tests.</summary>
    public List<string> Names { get; init; } = [];

    /// <summary>Seconds of processor time that each test takes on the unchanged library.</summary>
    public List<double> Seconds { get; init; } = [];

    /// <summary>For each mutant the tests that reach it, the fastest first.</summary>
    public Dictionary<int, int[]> TestsOf { get; init; } = [];

    /// <summary>Mutants that were reached while something static was set up, which happens once in a process.</summary>
    public HashSet<int> Static { get; init; } = [];

    public static Plan Read(string folder) => JsonSerializer.Deserialize<Plan>(File.ReadAllText(Path.Combine(folder, "plan.json")))!;

    public void Write(string folder) => File.WriteAllText(Path.Combine(folder, "plan.json"), JsonSerializer.Serialize(this));
}
