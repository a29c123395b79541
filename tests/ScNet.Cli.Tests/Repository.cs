namespace ScNet.Cli.Tests;

/// <summary>The files of the repository.</summary>
internal static class Repository
{
    /// <summary>A folder by its path from the root.</summary>
    public static string Folder(string path)
    {
        string? directory = AppContext.BaseDirectory;
        while (directory is not null && !File.Exists(Path.Combine(directory, "ScNet.sln")))
        {
            directory = Path.GetDirectoryName(directory);
        }

        return Path.Combine(directory!, path);
    }
}
