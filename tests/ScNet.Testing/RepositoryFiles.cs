namespace ScNet.Testing;

/// <summary>Finds files of the repository from where the tests run.</summary>
internal static class RepositoryFiles
{
    private static readonly Lazy<string> s_root = new(FindRoot);

    /// <summary>The folder that holds the solution.</summary>
    public static string Root => s_root.Value;

    /// <summary>The path of a file or folder of the repository.</summary>
    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ScNet.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException($"No folder above {AppContext.BaseDirectory} holds ScNet.sln.");
    }
}
