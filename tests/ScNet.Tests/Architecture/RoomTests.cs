using System.Text.RegularExpressions;

namespace ScNet.Tests.Architecture;

/// <summary>Which room of the library may use which: each only those that stand before it.</summary>
/// <remarks>
/// A file that uses a type of another room names its namespace, in a using directive or in place: unused
/// directives are errors of the build, so the directives are what is used. Types of the root need no
/// directive; where they must not be used, their names are looked for.
/// </remarks>
public sealed partial class RoomTests
{
    private const string Root = "";

    /// <summary>From the ground up.</summary>
    private static readonly string[] s_rooms =
    [
        "Kernel", "Numerics", Root, "Netlists", "Topologies", "Analysis", "SteadyState", "Stress", "Devices", "Reconfiguration", "Design", "Results",
    ];

    /// <summary>From a requirement to a choice, within the room of the design.</summary>
    private static readonly string[] s_steps = ["Requirements", "Losses", "Regulation", "Sizing", "Maps", "Choice"];

    /// <summary>Rooms that stand by themselves.</summary>
    private static readonly string[] s_alone = ["Kernel", "Numerics"];

    public static TheoryData<string> Rooms => [.. s_rooms];

    [Fact]
    public void Every_room_has_its_place_in_the_order() => Assert.Equal(
        s_rooms.Where(r => r != Root).Order(StringComparer.Ordinal),
        Directory.GetDirectories(Library).Select(d => Path.GetFileName(d)).Where(d => d is not ("bin" or "obj")).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_uses_only_rooms_that_stand_before_it(string room)
    {
        string[] allowed = s_alone.Contains(room) ? [] : s_rooms[..Array.IndexOf(s_rooms, room)];
        Assert.Empty(Arrows(room, allowed));
    }

    [Fact]
    public void A_step_of_the_design_uses_only_steps_before_it()
    {
        string design = Path.Combine(Library, "Design");
        Assert.Equal(s_steps.Order(StringComparer.Ordinal), Directory.GetDirectories(design).Select(d => Path.GetFileName(d)).Order(StringComparer.Ordinal));
        Assert.Empty(
            from step in s_steps.Prepend(Root)
            from file in Directory.GetFiles(Path.Combine(design, step), "*.cs", step == Root ? SearchOption.TopDirectoryOnly : SearchOption.AllDirectories)
            from later in s_steps[(Array.IndexOf(s_steps, step) + 1)..]
            where Regex.IsMatch(Said().Replace(File.ReadAllText(file), " "), $@"\bDesign\.{later}\b")
            select $"{Path.GetRelativePath(Library, file)} uses {later}");
    }

    [Theory]
    [InlineData("namespace ScNet.Kernel; class A { ScNet.Design.B b; }", "Design")]
    [InlineData("using ScNet.Design;\nnamespace ScNet.Kernel;", "Design")]
    [InlineData("namespace ScNet.Kernel; class A { Design.B b; }", "Design")]
    [InlineData("using Form = ScNet.Design.Form;\nnamespace ScNet.Kernel;", "Design")]
    [InlineData("namespace ScNet.Kernel; class A { Converter b; }", Root)]
    public void An_arrow_is_seen(string code, string target) => Assert.Equal([target], Targets(code, "Kernel"));

    [Theory]
    [InlineData("/// <see cref=\"ScNet.Design.B\"/>\nnamespace ScNet.Kernel;")]
    [InlineData("// Converter of Design.B\nnamespace ScNet.Kernel;")]
    [InlineData("namespace ScNet.Kernel; class A { string b = \"Converter and Design.B\"; }")]
    [InlineData("namespace ScNet.Kernel; class Design { int B; } class C { int D(Design d) => d.B; }")]
    public void What_is_said_is_no_arrow(string code) => Assert.Empty(Targets(code, "Kernel"));

    private static string Library => RepositoryFiles.PathOf("src", "ScNet");

    private static IEnumerable<string> Arrows(string room, string[] allowed) =>
        from file in Directory.GetFiles(Path.Combine(Library, room), "*.cs", room == Root ? SearchOption.TopDirectoryOnly : SearchOption.AllDirectories)
        from target in Targets(File.ReadAllText(file), room)
        where target != room && !allowed.Contains(target)
        select $"{Path.GetRelativePath(Library, file)} uses {(target == Root ? "the root" : target)}";

    private static IEnumerable<string> Targets(string text, string room)
    {
        string code = Said().Replace(text, " ");
        IEnumerable<string> named = s_rooms.Where(r => r != Root && r != room && Regex.IsMatch(code, $@"\bScNet\.{r}\b")
            || (Regex.IsMatch(code, $@"(?<![\w.]){r}\.[A-Z]") && !Regex.IsMatch(code, $@"\b{r}\s*(?:=>|[{{=;,)])")));
        return s_alone.Contains(room) && s_rootTypes.Value.IsMatch(code) ? [.. named, Root] : named;
    }

    private static readonly Lazy<Regex> s_rootTypes = new(() =>
    {
        string names = string.Join('|', typeof(Converter).Assembly.GetTypes()
            .Where(t => t.Namespace == "ScNet" && !t.IsNested && !t.Name.Contains('<', StringComparison.Ordinal))
            .Select(t => t.Name.Split('`')[0]).Distinct());
        // as a type, and not as the name of a member
        return new Regex($@"(?<![\w.])(?:new (?:{names})\b|(?:{names})(?=\s+[a-zA-Z_]|[\[?.<>]|\)\w))");
    });

    // comments, strings and the namespace of the file itself
    [GeneratedRegex("""//.*|/\*(?s:.*?)\*/|\$?@?"(?:\\.|[^"\\])*"|^namespace .*;$""", RegexOptions.Multiline)]
    private static partial Regex Said();
}
