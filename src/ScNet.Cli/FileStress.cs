using System.Globalization;
using ScNet.Analysis;
using ScNet.Devices;
using ScNet.Results;
using ScNet.Stress;

namespace ScNet.Cli;

/// <summary>What the elements of one file must withstand.</summary>
/// <param name="File">The file.</param>
/// <param name="Stress">The stress; null where the file could not be read or has not what was asked for.</param>
/// <param name="Ratings">The ratings; null where none are asked for, or no kinds serve.</param>
/// <param name="Only">The only mode that was asked for; null for all.</param>
/// <param name="IsComplete">Whether everything that was asked for has a result.</param>
internal sealed record FileStress(NetlistFile File, ConverterStress? Stress, ConverterRatings? Ratings, Mode? Only, bool IsComplete)
{
    // the changes between two modes are the square of them in time and memory
    private const int MaximumModes = 128;

    /// <summary>Finds the stress of a file; what is wrong with it goes to <paramref name="error"/>.</summary>
    /// <param name="file">The file.</param>
    /// <param name="inputVolts">The input voltages in volts (V).</param>
    /// <param name="openSwitchesLeak">Whether open switches at floating nodes leak.</param>
    /// <param name="modeName">The only mode that is asked for; null for all.</param>
    /// <param name="devices">What the elements are made of.</param>
    /// <param name="error">Receives what is wrong.</param>
    /// <param name="progress">Is told the share of the changes between modes that are found, where they are asked for; null for nobody.</param>
    public static FileStress Of(
        NetlistFile file, Interval<double> inputVolts, bool openSwitchesLeak, string? modeName, DeviceChoice devices, TextWriter error, IProgress<double>? progress = null)
    {
        FileAnalysis analysis = FileAnalysis.Of(file, modeName, error);
        analysis.ReportFailures(error);
        if (analysis.Converter is not { } converter || !analysis.IsKnown)
        {
            return new FileStress(file, null, null, null, IsComplete: false);
        }

        if (converter.Modes.Count > MaximumModes && (modeName is null || devices.IsGiven))
        {
            string advice = devices.IsGiven ? "Leave some modes out." : "Ask for one with --mode, or leave some out.";
            error.WriteLine(Printable.Of(string.Create(
                CultureInfo.InvariantCulture, $"{file.Path}: Expected at most {MaximumModes} modes, as every change between two is looked at, but '{converter.Name}' has {converter.Modes.Count}. {advice}")));
            return new FileStress(file, null, null, null, IsComplete: false);
        }

        ConverterStress stress = ConverterStress.Of(ConverterAnalysis.Of(converter), inputVolts, openSwitchesLeak);
        if (modeName is null || devices.IsGiven)
        {
            stress.FindChanges(progress);
        }

        ConverterRatings? ratings = stress.Modes.Count > 0 ? devices.Rate(file.Path, stress, error) : null;
        return new FileStress(
            file, stress, ratings, modeName is null ? null : converter.Modes[modeName], analysis.IsComplete && (ratings is not null || !devices.IsGiven));
    }

    /// <summary>The same for tables and pages.</summary>
    public RatedStress Result => Ratings is not null ? RatedStress.Of(File.Path, Ratings, Only)
        : Stress is not null ? RatedStress.Of(File.Path, Stress, Only)
        : RatedStress.Unreadable(File.Path, File.Reading.Diagnostics);
}
