namespace ScNet.Reporting.Tests.Documentation;

/// <summary>The gallery of docs is what the library draws and finds today. With SCNET_WRITE_GALLERY=1 it is written first.</summary>
public sealed class GalleryTests
{
    [Fact]
    public void The_gallery_is_that_of_today()
    {
        string folder = RepositoryFiles.PathOf("docs", "gallery");
        SortedDictionary<string, string> files = Gallery.Files();
        if (Environment.GetEnvironmentVariable("SCNET_WRITE_GALLERY") == "1")
        {
            Directory.CreateDirectory(folder);
            foreach ((string name, string text) in files)
            {
                File.WriteAllText(Path.Combine(folder, name), text);
            }
        }

        Assert.Equal(files.Keys, Directory.GetFiles(folder).Select(f => Path.GetFileName(f)!).Where(f => f != "toc.yml").Order(StringComparer.Ordinal));
        Assert.All(files, file => Assert.Equal(file.Value, File.ReadAllText(Path.Combine(folder, file.Key)).ReplaceLineEndings("\n")));
    }
}
