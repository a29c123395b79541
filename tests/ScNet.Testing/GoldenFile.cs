
namespace ScNet.Testing;

/// <summary>Texts that are kept in the repository and must come out the same to the byte.</summary>
internal static class GoldenFile
{
    /// <summary>With this environment variable set to 1 the files are written anew before they are compared.</summary>
    private const string Update = "SCNET_UPDATE_GOLDEN";

    /// <summary>Compares a text with a file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="parts">The path of the file from the root of the repository.</param>
    public static void Is(string text, params string[] parts)
    {
        string path = RepositoryFiles.PathOf(parts);
        if (Environment.GetEnvironmentVariable(Update) == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }

        Assert.Equal(File.ReadAllText(path), text);
    }
}
