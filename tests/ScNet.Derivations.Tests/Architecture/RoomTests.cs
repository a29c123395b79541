using System.Text.RegularExpressions;

namespace ScNet.Derivations.Tests.Architecture;

/// <summary>Which room of the package may use which: each only those that stand before it.</summary>
/// <remarks>
/// The root holds two things: the nouns (statements, findings, slips), before the rooms that work on them, and the doors
/// through which a user comes in, behind all rooms. A file that uses a room names its namespace in a using directive, as
/// unused directives are errors of the build; types of the root need none, so the doors are looked for by name.
/// </remarks>
public sealed partial class RoomTests
{
    private const string Nouns = "the nouns of the root";
    private const string Doors = "the doors of the root";

    /// <summary>What each room may use.</summary>
    private static readonly Dictionary<string, string[]> s_rooms = new()
    {
        ["Expressions"] = [],
        [Nouns] = ["Expressions"],
        ["Snapshots"] = [Nouns],
        ["Checking"] = ["Expressions", Nouns],
        ["Working"] = ["Expressions"],
        [Doors] = ["Expressions", Nouns, "Snapshots", "Checking", "Working"],
        ["Documents"] = ["Expressions", Nouns, Doors],
        ["Pages"] = ["Expressions", Nouns, "Snapshots", "Working", Doors],
    };

    private static readonly string[] s_doors = ["AnalysisDifference", "AnalysisSnapshot", "Derivation", "SnapshotChange"];

    public static TheoryData<string> Rooms => [.. s_rooms.Keys];

    [Fact]
    public void Every_folder_is_a_room() => Assert.Equal(
        s_rooms.Keys.Where(r => r is not (Nouns or Doors)).Order(StringComparer.Ordinal),
        Directory.GetDirectories(Package).Select(d => Path.GetFileName(d)).Where(d => d is not ("bin" or "obj")).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_uses_only_rooms_that_stand_before_it(string room)
    {
        Assert.NotEmpty(Files(room));
        Assert.Empty(Files(room).SelectMany(f => Targets(File.ReadAllText(f), room).Except(s_rooms[room]).Select(t => $"{Path.GetFileName(f)} uses {t}")));
    }

    [Theory]
    [InlineData("using ScNet.Derivations.Checking;\nnamespace ScNet.Derivations;", Nouns, "Checking")]
    [InlineData("namespace ScNet.Derivations; class A { Checking.B b; }", Nouns, "Checking")]
    [InlineData("namespace ScNet.Derivations.Checking; class A { Derivation b; }", "Checking", Doors)]
    [InlineData("namespace ScNet.Derivations.Expressions; class A { Finding b; }", "Expressions", Nouns)]
    public void An_arrow_is_seen(string code, string room, string target) => Assert.Equal([target], Targets(code, room));

    [Theory]
    [InlineData("/// <see cref=\"Derivation\"/>\nnamespace ScNet.Derivations.Checking;")]
    [InlineData("namespace ScNet.Derivations.Checking; class A { string b = \"Derivation of Working.B\"; }")]
    public void What_is_said_is_no_arrow(string code) => Assert.Empty(Targets(code, "Checking"));

    private static string Package => RepositoryFiles.PathOf("src", "ScNet.Derivations");

    private static string[] Files(string room) => room is Nouns or Doors
        ? [.. Directory.GetFiles(Package, "*.cs").Where(f => s_doors.Contains(Path.GetFileNameWithoutExtension(f)) == (room == Doors))]
        : Directory.GetFiles(Path.Combine(Package, room), "*.cs", SearchOption.AllDirectories);

    private static IEnumerable<string> Targets(string text, string room)
    {
        string code = Said().Replace(text, " ");
        foreach (string other in s_rooms.Keys.Where(r => r != room))
        {
            string pattern = other switch
            {
                Nouns => Types(Files(Nouns)),
                Doors => Types(Files(Doors)),
                _ => $@"\bScNet\.Derivations\.{other}\b|(?<![\w.]){other}\.[A-Z]",
            };
            if (Regex.IsMatch(code, pattern))
            {
                yield return other;
            }
        }
    }

    // as a type, and not as the name of a member
    private static string Types(string[] files)
    {
        string names = string.Join('|', files.Select(f => Path.GetFileNameWithoutExtension(f)));
        return $@"(?<![\w.])(?:new (?:{names})\b|(?:{names})(?=\s+[a-zA-Z_]|[\[?.<>]|\)\w))";
    }

    // comments, strings and the namespace of the file itself
    [GeneratedRegex("""//.*|/\*(?s:.*?)\*/|\$?@?"(?:\\.|[^"\\])*"|^namespace .*?;""", RegexOptions.Multiline)]
    private static partial Regex Said();
}
