using ScNet.Netlists;
using ScNet.Topologies;

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

    /// <summary>Reads a file, or standard input; its errors go to standard error, one line each. Null where standard input was read before.</summary>
    public static NetlistFile? Read(string path, ToolSession session)
    {
        NetlistReading? reading = session.Read(path, NetlistReader.Read, NetlistReader.ReadFile);
        if (reading is null)
        {
            return null;
        }

        NetlistFile file = new(path == ToolSession.InputName ? ToolSession.InputTitle : path, reading);
        if (!reading.HasResult)
        {
            foreach (Diagnostic diagnostic in reading.Diagnostics)
            {
                session.Error.WriteLine(file.Describe(diagnostic));
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
