// report.cs NAMED ROOM=REPORT...: the table of what became of the mutants of each room, and those that no test notices; NAMED is the list of those
// that were looked at and change nothing that can be noticed. Answers 1 where a room is below what its report asks for.
#:property PublishAot=false
#:property JsonSerializerIsReflectionEnabledByDefault=true
using System.Globalization;
using System.Text.Json;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is not [string list, .. { Length: > 0 } reports])
{
    Console.Error.WriteLine("report.cs NAMED ROOM=REPORT...");
    return 2;
}

// file, line of the source, what it becomes, reason
HashSet<(string File, string Source, string Becomes)> named = [.. File.ReadAllLines(list).Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split('\t')).Select(cells => (cells[0], cells[1], cells[2]))];
List<string[]> rows = [["room", "mutants", "killed", "timeout", "survived", "of these named", "no coverage", "score"]];
List<string> survivors = [];
bool passes = true;
foreach (string report in reports)
{
    string room = report[..report.IndexOf('=', StringComparison.Ordinal)];
    using JsonDocument document = JsonDocument.Parse(File.ReadAllText(report[(room.Length + 1)..]));
    Dictionary<string, int> counts = new() { ["Killed"] = 0, ["Timeout"] = 0, ["Survived"] = 0, ["NoCoverage"] = 0 };
    int equivalent = 0;
    foreach (JsonProperty file in document.RootElement.GetProperty("files").EnumerateObject().Where(f => !f.Name.EndsWith("Idle.cs", StringComparison.Ordinal)))
    {
        string path = file.Name[(file.Name.LastIndexOf("src/ScNet/", StringComparison.Ordinal) is int at and >= 0 ? at + "src/ScNet/".Length : 0)..];
        string[] lines = file.Value.GetProperty("source").GetString()!.Split('\n');
        foreach (JsonElement mutant in file.Value.GetProperty("mutants").EnumerateArray())
        {
            string status = mutant.GetProperty("status").GetString()!;
            if (!counts.TryGetValue(status, out int count))
            {
                continue;
            }

            counts[status] = count + 1;
            if (status is "Survived" or "NoCoverage")
            {
                Mutant place = new(mutant, lines);
                bool isNamed = named.Contains((path, place.Source, place.Becomes));
                equivalent += isNamed ? 1 : 0;
                survivors.Add($"{(isNamed ? "named" : status == "Survived" ? "SURVIVED" : "NO COVERAGE")}\t{path}:{place.Line}\t{place.Source}\t{place.Becomes}");
            }
        }
    }

    int all = counts.Values.Sum();
    double score = all == 0 ? 100 : 100.0 * (counts["Killed"] + counts["Timeout"]) / all;
    passes &= score >= document.RootElement.GetProperty("thresholds").GetProperty("low").GetDouble();
    rows.Add([room, $"{all}", $"{counts["Killed"]}", $"{counts["Timeout"]}", $"{counts["Survived"]}", $"{equivalent}", $"{counts["NoCoverage"]}", $"{score:F1} %"]);
}

survivors.ForEach(Console.WriteLine);
int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(column => rows.Max(row => row[column].Length))];
rows.ForEach(row => Console.WriteLine(string.Join("  ", row.Select((cell, column) => column == 0 ? cell.PadRight(widths[0]) : cell.PadLeft(widths[column])))));
return passes ? 0 : 1;

internal sealed class Mutant(JsonElement mutant, string[] lines)
{
    private readonly JsonElement _start = mutant.GetProperty("location").GetProperty("start");
    private readonly JsonElement _end = mutant.GetProperty("location").GetProperty("end");

    public int Line => _start.GetProperty("line").GetInt32();

    public string Source => Flat(lines[Line - 1]);

    // the whole of the line as it stands in the mutant, so that two mutants of one line are told apart
    public string Becomes =>
        Flat(lines[Line - 1][..(_start.GetProperty("column").GetInt32() - 1)] + mutant.GetProperty("replacement").GetString()
            + lines[_end.GetProperty("line").GetInt32() - 1][(_end.GetProperty("column").GetInt32() - 1)..]);

    private static string Flat(string text) => string.Join(' ', text.Split((char[])[' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
