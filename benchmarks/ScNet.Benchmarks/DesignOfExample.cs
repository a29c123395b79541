using BenchmarkDotNet.Attributes;
using ScNet.Design.Choice;
using ScNet.Design.Requirements;

namespace ScNet.Benchmarks;

/// <summary>The example of the documentation from its requirement to ranked and sized candidates, on all cores and on one.</summary>
public class DesignOfExample
{
    private Requirement? _requirement;
    private IReadOnlyList<Candidate> _candidates = [];

    /// <summary>The threads at most.</summary>
    [Params(1, 2)]
    public int Threads { get; set; }

    /// <summary>Reads the requirement.</summary>
    [GlobalSetup]
    public void Read()
    {
        DirectoryInfo root = new(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "ScNet.sln")))
        {
            root = root.Parent ?? throw new InvalidOperationException("Expected to run within the repository.");
        }

        string examples = Path.Combine(root.FullName, "docs", "examples");
        _requirement = RequirementReader.ReadFile(Path.Combine(examples, "core-requirement.toml")).Requirement!;
        _candidates = Candidates.Of(_requirement, examples).All;
    }

    /// <summary>All candidates sized, mapped and ranked.</summary>
    [Benchmark]
    public RankedChoice Choose() => RankedChoice.Of(_requirement!, _candidates, threads: Threads);
}
