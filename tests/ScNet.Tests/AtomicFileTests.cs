using System.Diagnostics;

namespace ScNet.Tests;

/// <summary>A file appears whole or not at all, under whatever its name leads to.</summary>
public sealed class AtomicFileTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scnet-files-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_file_is_made_and_replaced_and_nothing_else_is_left()
    {
        string path = PathOf("a.txt");
        AtomicFile.Write(path, "one Ω");
        AtomicFile.Write(path, "two");
        Assert.Equal("two", File.ReadAllText(path));
        AtomicFile.Write(path, [1, 2]);
        Assert.Equal([1, 2], File.ReadAllBytes(path));
        Assert.Equal([path], Directory.GetFileSystemEntries(_folder.FullName));
    }

    [Fact]
    public void While_a_file_is_written_its_name_has_the_old_one()
    {
        string path = PathOf("a.txt");
        AtomicFile.Write(path, "old");
        AtomicFile.Write(path, stream =>
        {
            stream.Write("new"u8);
            stream.Flush();
            Assert.Equal("old", File.ReadAllText(path));
        });
        Assert.Equal("new", File.ReadAllText(path));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_fails_half_way_leaves_the_old_file_or_none(bool isThere)
    {
        string path = PathOf("a.txt");
        if (isThere)
        {
            AtomicFile.Write(path, "old");
        }

        string[] before = Directory.GetFileSystemEntries(_folder.FullName);
        Assert.Throws<InvalidOperationException>(() => AtomicFile.Write(path, stream =>
        {
            stream.Write("half"u8);
            stream.Flush();
            throw new InvalidOperationException();
        }));
        Assert.Equal(before, Directory.GetFileSystemEntries(_folder.FullName));
        Assert.Equal(isThere ? "old" : null, isThere ? File.ReadAllText(path) : null);
    }

    [Theory]
    [InlineData("none/a.txt")]
    [InlineData(".")]
    [InlineData("/")]
    public void What_cannot_be_written_is_told_by_the_name_that_was_given_and_found_before_too(string name)
    {
        string path = Path.Combine(_folder.FullName, name);
        foreach (Action act in new[] { () => AtomicFile.Write(path, "x"), () => AtomicFile.Try(path) })
        {
            IOException refusal = Assert.Throws<IOException>(act);
            Assert.Contains($"'{path}'", refusal.Message, StringComparison.Ordinal);
        }

        Assert.Empty(Directory.GetFileSystemEntries(_folder.FullName));
    }

    [Fact]
    public void A_try_leaves_no_trace_and_an_existing_file_as_it_is()
    {
        string path = PathOf("a.txt");
        AtomicFile.Try(path);
        Assert.Empty(Directory.GetFileSystemEntries(_folder.FullName));
        AtomicFile.Write(path, "old");
        AtomicFile.Try(path);
        Assert.Equal("old", File.ReadAllText(path));
        Assert.Single(Directory.GetFileSystemEntries(_folder.FullName));
    }

    [Fact]
    public void A_link_is_followed_whether_or_not_there_is_something_at_its_end()
    {
        string path = PathOf("link.txt"), target = Path.Combine(_folder.CreateSubdirectory("sub").FullName, "a.txt");
        File.CreateSymbolicLink(path, Path.Combine("sub", "a.txt"));
        foreach (string text in new[] { "first", "second" })
        {
            AtomicFile.Write(path, text);
            Assert.NotNull(new FileInfo(path).LinkTarget);
            Assert.Equal(text, File.ReadAllText(target));
        }

        Assert.Equal([target], Directory.GetFileSystemEntries(Path.GetDirectoryName(target)!));
    }

    [Fact]
    public void A_link_that_leads_to_itself_is_an_error()
    {
        string path = PathOf("link.txt");
        File.CreateSymbolicLink(path, path);
        Assert.Throws<IOException>(() => AtomicFile.Write(path, "x"));
    }

    [Fact]
    public void A_file_keeps_its_mode()
    {
        if (!OperatingSystem.IsWindows())
        {
            const UnixFileMode Mode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.UserExecute;
            string path = PathOf("a.txt");
            File.WriteAllText(path, "old");
            File.SetUnixFileMode(path, Mode);
            AtomicFile.Write(path, "new");
            Assert.Equal((Mode, "new"), (File.GetUnixFileMode(path), File.ReadAllText(path)));
        }
    }

    [Fact]
    public async Task A_pipe_stays_a_pipe_and_takes_what_is_written()
    {
        if (OperatingSystem.IsLinux())
        {
            string path = PathOf("pipe");
            using (Process make = Process.Start("mkfifo", [path]))
            {
                await make.WaitForExitAsync();
            }

            AtomicFile.Try(path);
            Task<string> reader = Task.Run(() => File.ReadAllText(path));
            AtomicFile.Write(path, "through");
            Assert.Equal("through", await reader);
            Assert.Equal([path], Directory.GetFileSystemEntries(_folder.FullName));
        }
    }

    [Fact]
    public void A_device_stays_a_device()
    {
        if (OperatingSystem.IsLinux())
        {
            AtomicFile.Try("/dev/full");
            IOException refusal = Assert.Throws<IOException>(() => AtomicFile.Write("/dev/full", "more than it takes"));
            Assert.Contains("No space left", refusal.Message, StringComparison.Ordinal);
            Assert.Throws<IOException>(() => AtomicFile.Write("/dev/full", "still"));
        }
    }

    private string PathOf(string name) => Path.Combine(_folder.FullName, name);
}
