using System.Text.RegularExpressions;

namespace ScNet.Synthesis.Tests.Architecture;

/// <summary>Which room of the package may use which, and that the solver stays where it belongs.</summary>
public class RoomTests
{
    private static readonly string[] s_rooms = ["Candidates", "Solving", "Realising"];

    [Fact]
    public void Every_folder_is_a_room() => Assert.Equal(
        s_rooms.Order(StringComparer.Ordinal),
        Directory.GetDirectories(RepositoryFiles.PathOf("src", "ScNet.Synthesis")).Select(d => Path.GetFileName(d)).Where(d => d is not ("bin" or "obj")).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("Candidates")]
    [InlineData("Solving")]
    [InlineData("Realising")]
    public void A_room_uses_only_rooms_that_stand_before_it(string room)
    {
        string[] files = Directory.GetFiles(RepositoryFiles.PathOf("src", "ScNet.Synthesis", room), "*.cs");
        Assert.NotEmpty(files);
        Assert.DoesNotContain(files, f => UsesLater(File.ReadAllText(f), room));
    }

    [Fact]
    public void An_arrow_that_runs_back_is_seen()
    {
        Assert.True(UsesLater("using ScNet.Synthesis.Solving;", "Candidates"));
        Assert.False(UsesLater("using ScNet.Synthesis.Candidates;", "Solving"));
    }

    [Fact]
    public void Only_this_package_depends_on_the_solver() => Assert.Equal(
        ["ScNet.Synthesis.csproj"],
        Directory.GetFiles(RepositoryFiles.PathOf("src"), "*.csproj", SearchOption.AllDirectories)
            .Where(f => Regex.IsMatch(File.ReadAllText(f), "Google\\.OrTools|ScNet\\.Synthesis\\.csproj"))
            .Select(f => Path.GetFileName(f)));

    private static bool UsesLater(string code, string room) => s_rooms.SkipWhile(r => r != room).Skip(1).Any(later => code.Contains($"ScNet.Synthesis.{later}", StringComparison.Ordinal));
}
