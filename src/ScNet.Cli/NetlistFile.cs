using ScNet.Netlists;
using ScNet.Results.Pages;

namespace ScNet.Cli;

/// <summary>One file, or family, of the command line: as it was named, and what came of reading it.</summary>
internal sealed class NetlistFile
{
    private NetlistFile(string path, NetlistReading reading)
    {
        Path = path;
        Reading = reading;
    }

    public string Path { get; }

    public NetlistReading Reading { get; }

    /// <summary>Reads a file; its errors go to <paramref name="error"/>, one line each.</summary>
    public static NetlistFile Read(string path, TextWriter error)
    {
        NetlistFile file = new(path, NetlistReader.ReadFile(path));
        if (!file.Reading.HasResult)
        {
            foreach (Diagnostic diagnostic in file.Reading.Diagnostics)
            {
                error.WriteLine(file.Describe(diagnostic));
            }
        }

        return file;
    }

    /// <summary>A standard family as the file that its document would be.</summary>
    public static NetlistFile Of(FamilyRequest family) => new(family.ToString(), NetlistReader.Read(NetlistWriter.ToToml(family.Build())));

    /// <summary>A finding on one line that begins with the file.</summary>
    public string Describe(Diagnostic diagnostic) =>
        Printable.Of(diagnostic.Position is null ? $"{Path}: {diagnostic}" : diagnostic.ToString());
}
