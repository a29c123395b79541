namespace ScNet.Fuzzing.Tests;

/// <summary>Every text that a campaign kept, and every one that broke something once, keeps every property of its target.</summary>
public sealed class CorpusTests
{
    /// <summary>What reads each text is small: this many bytes for all that is allocated, kept or not.</summary>
    private const long MaximumAllocation = 64L << 20;

    public static TheoryData<string> Names => [.. FuzzTargets.All.Select(t => t.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_text_that_was_kept_keeps_the_properties(string name)
    {
        FuzzTarget target = FuzzTargets.Named(name);
        string[] files = [.. Files("corpora", name), .. Files("crashers", name)];
        Assert.True(files.Length >= 10, $"Expected a corpus, but there are {files.Length} files.");
        List<string> broken = [];
        foreach (string file in files)
        {
            try
            {
                long allocated = FuzzRun.Execute(target, File.ReadAllBytes(file));
                if (allocated > MaximumAllocation)
                {
                    broken.Add($"{file}: {allocated} bytes were allocated");
                }
            }
            catch (Exception fault) when (fault is not OutOfMemoryException)
            {
                broken.Add($"{file}: {fault}");
            }
        }

        Assert.Empty(broken);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_corpus_has_texts_of_the_size_that_is_tried(string name) => Assert.All(
        Files("corpora", name),
        file => Assert.InRange(new FileInfo(file).Length, 0, FuzzTargets.Named(name).MaximumLength));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_target_has_a_dictionary(string name) => Assert.All(
        File.ReadAllLines(RepositoryFiles.PathOf("tests", "ScNet.Fuzzing", "dictionaries", $"{name}.dict")).Where(l => l.Length > 0 && l[0] != '#'),
        line => Assert.Matches("^\"([ !#-Z\\[\\]-~]|\\\\[\"\\\\]|\\\\x[0-9A-F]{2})+\"$", line));

    private static string[] Files(string kind, string name)
    {
        string folder = RepositoryFiles.PathOf("tests", "ScNet.Fuzzing", kind, name);
        return Directory.Exists(folder) ? [.. Directory.GetFiles(folder).Order(StringComparer.Ordinal)] : [];
    }
}
