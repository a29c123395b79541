using System.Text;

namespace ScNet;

/// <summary>
/// The one way in which files are written: a file appears under its name whole or not at all. It is written beside it under another
/// name, brought to the disk, then renamed, which replaces what has the name. Of two writers the later one wins; what a killed one
/// leaves begins with a dot.
/// </summary>
/// <remarks>
/// A link is followed, a file keeps its mode, and one that must not be written is not replaced. What is no file, such as a pipe or a
/// device, is written as it comes: renaming over it would put a file in its place.
/// </remarks>
internal static class AtomicFile
{
    private const string TemporaryExtension = ".tmp";
    private const int BufferSize = 1 << 16;

    /// <summary>Writes a text in UTF-8 without a mark.</summary>
    /// <param name="path">The path; the folder exists.</param>
    /// <param name="text">The text.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void Write(string path, string text) => Write(path, Encoding.UTF8.GetBytes(text));

    /// <summary>Writes bytes.</summary>
    /// <param name="path">The path; the folder exists.</param>
    /// <param name="bytes">The bytes.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void Write(string path, byte[] bytes) => Write(path, stream => stream.Write(bytes));

    /// <summary>Writes what an action writes.</summary>
    /// <param name="path">The path; the folder exists.</param>
    /// <param name="write">Writes the content.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void Write(string path, Action<Stream> write) => Act(path, (target, temporary) =>
    {
        if (File.Exists(target))
        {
            using FileStream present = new(target, FileMode.Open, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete, BufferSize);
            if (!IsFile(present))
            {
                write(present);
                return;
            }
        }

        using (FileStream stream = new(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None, BufferSize))
        {
            write(stream);
            stream.Flush(flushToDisk: true);
        }

        if (!OperatingSystem.IsWindows() && File.Exists(target))
        {
            File.SetUnixFileMode(temporary, File.GetUnixFileMode(target));
        }

        File.Move(temporary, target, overwrite: true);
    });

    /// <summary>Fails now where <see cref="Write(string, Action{Stream})"/> would fail for want of a folder or a right, after hours of work.</summary>
    /// <param name="path">The path.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void Try(string path) => Act(path, (target, temporary) =>
    {
        // pipes and devices have no length, and whoever reads a pipe would take this for all there is
        if (!File.Exists(target) || new FileInfo(target).Length > 0)
        {
            new FileStream(temporary, FileMode.CreateNew).Dispose();
            File.Delete(temporary);
        }
    });

    private static void Act(string path, Action<string, string> act)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (Directory.Exists(path))
        {
            throw new IOException($"'{path}' is a folder.");
        }

        string temporary = string.Empty;
        try
        {
            string target = Target(Path.GetFullPath(path));
            temporary = Path.Combine(Path.GetDirectoryName(target)!, $".{Path.GetFileName(target)}.{Guid.NewGuid():N}{TemporaryExtension}");
            act(target, temporary);
        }
        catch (Exception exception)
        {
            if (File.Exists(temporary))
            {
                File.Delete(temporary);
            }

            // the last is how a file that is too large for its disk is told
            if (exception is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException)
            {
                // the name that the user gave, not the one beside it
                throw new IOException(temporary.Length > 0 ? Reason(exception, path).Replace(temporary, path, StringComparison.Ordinal) : exception.Message, exception);
            }

            throw;
        }
    }

    private static string Reason(Exception exception, string path) => exception is ArgumentOutOfRangeException ? $"The disk takes no file of this size : '{path}'" : exception.Message;

    // what a link leads to, unless it stands for a stream that is open, whose target is no path
    private static string Target(string path)
    {
        const string Streams = "/proc/";
        FileInfo file = new(path);
        return file.LinkTarget is not null && file.ResolveLinkTarget(returnFinalTarget: true) is { } final && (final.Exists || !final.FullName.StartsWith(Streams, StringComparison.Ordinal)) ? final.FullName : path;
    }

    // a pipe has no place in it, and a device no length that could be set
    private static bool IsFile(FileStream stream)
    {
        if (!stream.CanSeek || stream.Length > 0)
        {
            return stream.CanSeek;
        }

        try
        {
            stream.SetLength(0);
            return true;
        }
        catch (Exception exception) when (exception is IOException or ArgumentException or NotSupportedException)
        {
            return false;
        }
    }
}
