namespace ScNet.Tests;

/// <summary>Finds the files of the repository from wherever the tests run.</summary>
internal static class RepositoryFiles
{
    /// <summary>The folder that holds ScNet.sln.</summary>
    public static string Root { get; } = FindRoot();

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ScNet.sln")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException($"Expected ScNet.sln in a folder above '{AppContext.BaseDirectory}'.");
    }
}
