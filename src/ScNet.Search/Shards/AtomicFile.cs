namespace ScNet.Search.Shards;

/// <summary>
/// A file that appears under its name whole or not at all: written beside it under another name, brought to the disk,
/// then renamed, which replaces what has the name. Of two writers the later one wins; what a killed one leaves begins with a dot.
/// </summary>
internal static class AtomicFile
{
    private const string TemporaryExtension = ".tmp";

    /// <summary>Writes a file.</summary>
    /// <param name="path">Its path; the folder exists.</param>
    /// <param name="write">Writes the content.</param>
    public static void Write(string path, Action<Stream> write)
    {
        string temporary = TemporaryBeside(path);
        try
        {
            using (FileStream stream = new(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 1 << 16))
            {
                write(stream);
                stream.Flush(flushToDisk: true);
            }

            File.Move(temporary, path, overwrite: true);
        }
        catch
        {
            File.Delete(temporary);
            throw;
        }
    }

    /// <summary>Fails now where <see cref="Write"/> would fail for want of a folder or a right, after hours of work.</summary>
    public static void Try(string path)
    {
        string temporary = TemporaryBeside(path);
        new FileStream(temporary, FileMode.CreateNew).Dispose();
        File.Delete(temporary);
    }

    private static string TemporaryBeside(string path)
    {
        string whole = Path.GetFullPath(path);
        return Path.Combine(Path.GetDirectoryName(whole)!, $".{Path.GetFileName(whole)}.{Guid.NewGuid():N}{TemporaryExtension}");
    }
}
