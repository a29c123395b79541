using ScNet.Devices;

namespace ScNet.Results;

/// <summary>What the gates of one converter need, as tables and pages show it.</summary>
public sealed class GateNeeds
{
    private GateNeeds(string? file, ConverterGateDrive? drive, Mode? only, IEnumerable<Diagnostic> diagnostics)
    {
        File = file;
        Drive = drive;
        Only = only;
        Diagnostics = [.. diagnostics];
    }

    /// <summary>The file as the caller named it, or null where there is none.</summary>
    public string? File { get; }

    /// <summary>The gate drive; null where the file could not be read or no devices serve.</summary>
    public ConverterGateDrive? Drive { get; }

    /// <summary>The only mode to show phase by phase; null for all.</summary>
    public Mode? Only { get; }

    /// <summary>What is to be said of converter and modes; the errors where there is no result.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>The gate drive of a converter.</summary>
    /// <param name="file">The file as the caller named it, or null where there is none.</param>
    /// <param name="drive">The gate drive.</param>
    /// <param name="only">The only mode to show phase by phase; null for all.</param>
    public static GateNeeds Of(string? file, ConverterGateDrive drive, Mode? only = null)
    {
        ArgumentNullException.ThrowIfNull(drive);
        return new GateNeeds(file, drive, only, RatedStress.Of(file, drive.Ratings).Diagnostics);
    }

    /// <summary>A file that could not be read, or whose switches no devices make.</summary>
    /// <param name="file">The file as the caller named it.</param>
    /// <param name="diagnostics">The reasons.</param>
    public static GateNeeds Unreadable(string? file, IEnumerable<Diagnostic> diagnostics)
    {
        ArgumentNullException.ThrowIfNull(diagnostics);
        return new GateNeeds(file, null, null, diagnostics);
    }

    /// <summary>The phases of a switch in which it is closed, of the modes that are shown.</summary>
    internal IEnumerable<GatePhase> OnPhases(SwitchGateDrive gate) => gate.OnPhases.Where(p => Only is null || p.Mode == Only);

    /// <summary>The phases of a stack in which it is open, of the modes that are shown.</summary>
    internal IEnumerable<StackOffPhase> OffPhases(SwitchGateDrive gate) => gate.OffPhases.Where(p => Only is null || p.Mode == Only);

    /// <summary>File and gate drive, or that there is none.</summary>
    public override string ToString() => $"{File ?? Drive?.Ratings.Stress.Analysis.Converter.Name}: {Drive?.ToString() ?? "no result"}";
}
