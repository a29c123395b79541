using System.Text.RegularExpressions;

namespace ScNet.Tests.Architecture;

/// <summary>Files are written in one place, whole or not at all.</summary>
public sealed partial class WritingTests
{
    [Fact]
    public void No_file_is_written_but_by_the_one_writer() => Assert.Equal(
        ["AtomicFile.cs"],
        Directory.GetFiles(RepositoryFiles.PathOf("src"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && Writing().IsMatch(File.ReadAllText(f))).Select(f => Path.GetFileName(f)));

    [Theory]
    [InlineData("File.WriteAllText(path, text);", true)]
    [InlineData("File.AppendText(path);", true)]
    [InlineData("new FileStream(path, FileMode.Create)", true)]
    [InlineData("using StreamWriter writer = new(path);", true)]
    [InlineData("new StreamWriter(path)", true)]
    [InlineData("File.Move(a, b);", true)]
    [InlineData("AtomicFile.Write(path, text);", false)]
    [InlineData("File.ReadAllText(path); new FileStream(path, FileMode.Open, FileAccess.Read)", false)]
    [InlineData("using StreamWriter output = new(Console.OpenStandardOutput());", false)]
    [InlineData("using StreamWriter output = new(new StandardOutput(Console.OpenStandardOutput()));", false)]
    public void Writing_is_seen(string code, bool isWriting) => Assert.Equal(isWriting, Writing().IsMatch(code));

    [GeneratedRegex(@"(?<!\w)File\.(?:Write|Append|Create|Copy|Move|Replace|OpenWrite)|FileMode\.(?:Create|CreateNew|Append|OpenOrCreate|Truncate)|FileAccess\.(?:Write|ReadWrite)|StreamWriter(?:\s+\w+\s*=\s*new)?\((?!Console|new StandardOutput\()")]
    private static partial Regex Writing();
}
