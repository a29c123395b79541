using ScNet.Analysis;

namespace ScNet.Cli;

/// <summary>The analyses of the modes of one file that were asked for.</summary>
internal sealed class FileAnalysis
{
    private FileAnalysis(NetlistFile file, ModeAnalysis[] modes, bool hasMode)
    {
        File = file;
        Modes = modes;
        IsComplete = hasMode && file.Reading.Succeeded && modes.All(m => m.HasResult);
    }

    public NetlistFile File { get; }

    /// <summary>The converter, or null where the file could not be read.</summary>
    public Converter? Converter => File.Reading.Converter;

    public IReadOnlyList<ModeAnalysis> Modes { get; }

    /// <summary>Whether the file was read and everything asked for has a result.</summary>
    public bool IsComplete { get; }

    /// <summary>Analyses all modes of a file, or the one of the given name.</summary>
    public static FileAnalysis Of(NetlistFile file, string? modeName, TextWriter error)
    {
        if (file.Reading.Converter is not { } converter)
        {
            return new FileAnalysis(file, [], hasMode: true);
        }

        Mode[] modes = [.. converter.Modes.Where(m => modeName is null || m.Name == modeName)];
        if (modes.Length == 0)
        {
            string known = string.Join(", ", converter.Modes.Select(m => $"'{m.Name}'"));
            error.WriteLine(Rendering.Printable.Of($"{file.Path}: '{converter.Name}' has no mode '{modeName}'. Its modes: {known}."));
        }

        return new FileAnalysis(file, [.. modes.Select(m => ModeAnalysis.Of(converter, m))], modes.Length > 0);
    }
}
