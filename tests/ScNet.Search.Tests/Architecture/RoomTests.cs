using System.Text.RegularExpressions;

namespace ScNet.Search.Tests.Architecture;

/// <summary>Which room of the package may use which: each only those that stand before it.</summary>
/// <remarks>
/// The root holds the nouns, which know how they are worked out, and the doors: rooms may use both, and both any room but
/// the pages. A file that uses a room names its namespace in a using directive, as unused directives are errors of the build.
/// </remarks>
public sealed partial class RoomTests
{
    // in the order in which they may use one another
    private static readonly string[] s_rooms = ["LoopSpaces", "Networks", "Pairs", "Triples", "Atlases", "Shards", "Queries", "Pages"];

    public static TheoryData<string> Rooms => [.. s_rooms];

    [Fact]
    public void Every_folder_is_a_room() => Assert.Empty(
        Directory.GetDirectories(Package).Select(d => Path.GetFileName(d)).Except([.. s_rooms, "bin", "obj"]));

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_uses_only_rooms_that_stand_before_it(string room) => Assert.Empty(
        Files(room).SelectMany(f => Targets(File.ReadAllText(f), room).Where(t => Array.IndexOf(s_rooms, t) > Array.IndexOf(s_rooms, room)).Select(t => $"{Path.GetFileName(f)} uses {t}")));

    [Fact]
    public void The_root_knows_no_page() => Assert.Empty(
        Directory.GetFiles(Package, "*.cs").SelectMany(f => Targets(File.ReadAllText(f), string.Empty).Where(t => t == "Pages").Select(_ => Path.GetFileName(f))));

    [Theory]
    [InlineData("using ScNet.Search.Atlases;\nnamespace ScNet.Search.Pairs;", "Pairs", "Atlases")]
    [InlineData("namespace ScNet.Search.LoopSpaces; class A { Queries.B b; }", "LoopSpaces", "Queries")]
    public void An_arrow_is_seen(string code, string room, string target) => Assert.Equal([target], Targets(code, room));

    [Theory]
    [InlineData("/// <see cref=\"Atlases.B\"/>\nnamespace ScNet.Search.Pairs;")]
    [InlineData("namespace ScNet.Search.Pairs; class A { string b = \"of Atlases.B\"; }")]
    public void What_is_said_is_no_arrow(string code) => Assert.Empty(Targets(code, "Pairs"));

    private static string Package => RepositoryFiles.PathOf("src", "ScNet.Search");

    private static string[] Files(string room) => Directory.Exists(Path.Combine(Package, room)) ? Directory.GetFiles(Path.Combine(Package, room), "*.cs", SearchOption.AllDirectories) : [];

    private static IEnumerable<string> Targets(string text, string room)
    {
        string code = Said().Replace(text, " ");
        return s_rooms.Where(other => other != room && Regex.IsMatch(code, $@"\bScNet\.Search\.{other}\b|(?<![\w.]){other}\.[A-Z]"));
    }

    // comments, strings and the namespace of the file itself
    [GeneratedRegex("""//.*|/\*(?s:.*?)\*/|\$?@?"(?:\\.|[^"\\])*"|^namespace .*?;""", RegexOptions.Multiline)]
    private static partial Regex Said();
}
