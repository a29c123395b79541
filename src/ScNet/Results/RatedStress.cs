using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Results;

/// <summary>What the elements of one converter must withstand, as tables and pages show it.</summary>
public sealed class RatedStress
{
    private RatedStress(string? file, ConverterStress? stress, ConverterRatings? ratings, Mode? only, IEnumerable<Diagnostic> diagnostics)
    {
        File = file;
        Stress = stress;
        Ratings = ratings;
        Only = only;
        Diagnostics = [.. diagnostics];
    }

    /// <summary>The file as the caller named it, or null where there is none.</summary>
    public string? File { get; }

    /// <summary>The stress; null where the file could not be read.</summary>
    public ConverterStress? Stress { get; }

    /// <summary>How it compares with the devices; null where none are told.</summary>
    public ConverterRatings? Ratings { get; }

    /// <summary>The only mode to show; null for all modes and the changes between them.</summary>
    public Mode? Only { get; }

    /// <summary>What is to be said of converter and modes; the errors where the file could not be read.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>The stress of a converter.</summary>
    /// <param name="file">The file as the caller named it, or null where there is none.</param>
    /// <param name="stress">The stress.</param>
    /// <param name="only">The only mode to show; null for all and the changes between them.</param>
    public static RatedStress Of(string? file, ConverterStress stress, Mode? only = null)
    {
        ArgumentNullException.ThrowIfNull(stress);
        return new RatedStress(file, stress, null, only, Findings(stress));
    }

    /// <summary>The stress of a converter against the ratings of its devices.</summary>
    /// <param name="file">The file as the caller named it, or null where there is none.</param>
    /// <param name="ratings">The ratings.</param>
    /// <param name="only">The only mode to show; null for all and the changes between them. The verdicts count all modes in either case.</param>
    public static RatedStress Of(string? file, ConverterRatings ratings, Mode? only = null)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        return new RatedStress(file, ratings.Stress, ratings, only, Findings(ratings.Stress));
    }

    /// <summary>A file that could not be read, or of which nothing can be said.</summary>
    /// <param name="file">The file as the caller named it.</param>
    /// <param name="diagnostics">The reasons.</param>
    public static RatedStress Unreadable(string? file, IEnumerable<Diagnostic> diagnostics)
    {
        ArgumentNullException.ThrowIfNull(diagnostics);
        return new RatedStress(file, null, null, null, diagnostics);
    }

    /// <summary>File and stress, or that there is none.</summary>
    public override string ToString() => $"{File ?? Stress?.Analysis.Converter.Name}: {Stress?.ToString() ?? "no result"}";

    /// <summary>The modes that are shown.</summary>
    internal IEnumerable<ModeStress> Modes => Stress?.Modes.Where(m => Only is null || m.Mode == Only) ?? [];

    private static IEnumerable<Diagnostic> Findings(ConverterStress stress) =>
        stress.Analysis.Modes.SelectMany(m => m.Diagnostics).Union(stress.Analysis.Converter.Warnings);
}
