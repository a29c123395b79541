using System.Collections.Concurrent;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Netlists;
using ScNet.Reporting.Html;
using ScNet.Results;
using ScNet.SteadyState;

namespace ScNet.Reporting.Browser;

/// <summary>The reports that the tests look at, each made once and written to a folder that is taken away at the end.</summary>
internal static class Reports
{
    /// <summary>A name that would run if it were not text.</summary>
    public const string Evil = "<script>document.title='run'</script><img src=x onerror=alert(1)>";

    private static readonly string s_folder = Directory.CreateTempSubdirectory("scnet-report-").FullName;
    private static readonly ConcurrentDictionary<string, Lazy<string>> s_paths = new();

    private static readonly ComparisonConditions s_conditions = new(3.6, 1.2);

    static Reports() => AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(s_folder, recursive: true);

    /// <summary>The names of all reports.</summary>
    public static TheoryData<string> All { get; } = new("stage", "gears", "evil", "comparison", "design");

    /// <summary>The file of a report.</summary>
    public static string PathOf(string name) => s_paths.GetOrAdd(name, n => new Lazy<string>(() =>
    {
        string path = Path.Combine(s_folder, n + ".html");
        Make(n).Save(path);
        return path;
    })).Value;

    private static Report Make(string name) => name switch
    {
        "stage" => Report.OfConverter(Read("four-level-stage"), new ReportConditions { Point = new OperatingPoint(3.6, 0.02, 5e6), Limits = RatingLimits.OfRating(1.2) }),
        "gears" => Report.OfConverter(Read("core-gears"), new ReportConditions { Point = new OperatingPoint(3.6, 0.005, 5e6) }),
        "comparison" => Report.OfComparison(s_conditions, [
            .. Compared("dickson-5"), .. Compared("ladder-4"), .. Compared("three-phase-4"), .. Compared("core-gears"),
        ]),
        "design" => Report.OfDesign(Design()),
        "evil" => Report.OfConverter(ConverterAnalysis.Of(NetlistReader.Read(EvilText()).GetConverter()), new ReportConditions { Origin = Evil }),
        _ => throw new ArgumentException($"There is no report '{name}'.", nameof(name)),
    };

    private static IEnumerable<ResultRow<ComparedMode>> Compared(string example) =>
        Read(example).Modes.Select(m => ResultRow.Find($"{example}.toml", m, a => new ComparedMode(ModeComparison.Of(a, s_conditions))));

    // a few candidates of the example are enough for a ranking and a winner
    private static RankedChoice Design()
    {
        Requirement requirement = RequirementReader.ReadFile(RepositoryFiles.PathOf("docs/examples/core-requirement.toml")).GetRequirement();
        Candidates all = Candidates.Of(requirement, RepositoryFiles.PathOf("docs/examples"));
        return RankedChoice.Of(requirement, [.. all.All.Where(c => c.Kind != CandidateKind.Hybrid).Take(5)]);
    }

    private static ConverterAnalysis Read(string example) =>
        ConverterAnalysis.Of(NetlistReader.ReadFile(RepositoryFiles.PathOf($"docs/examples/{example}.toml")).GetConverter());

    private static string EvilText() => File.ReadAllText(RepositoryFiles.PathOf("docs/examples/half.toml"))
        .Replace("\"Half\"", $"\"{Evil}\"", StringComparison.Ordinal)
        .Replace("\"p\"", $"\"{Evil}p\"", StringComparison.Ordinal)
        .Replace("fly =", $"\"{Evil}\" =", StringComparison.Ordinal)
        .Replace("s1 =", $"\"{Evil}1\" =", StringComparison.Ordinal);
}
