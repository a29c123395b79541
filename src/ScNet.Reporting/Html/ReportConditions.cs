using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.SteadyState;

namespace ScNet.Reporting.Html;

/// <summary>Under what conditions a report shows a converter. All are optional.</summary>
public sealed record ReportConditions
{
    /// <summary>The operating point for waveforms, currents and losses; null for none.</summary>
    public OperatingPoint? Point { get; init; }

    /// <summary>The converter with its devices, for the losses at <see cref="Point"/> and the ratings of elements; null for none.</summary>
    public SizedConverter? Sized { get; init; }

    /// <summary>The devices against which stress is held; null for those of <see cref="Sized"/>, or else none.</summary>
    public RatingLimits? Limits { get; init; }

    /// <summary>The range of the input voltage in volts (V), for stress; null for that of <see cref="Point"/>, or else 1 V.</summary>
    public Interval<double>? InputVolts { get; init; }

    /// <summary>Where the converter comes from, such as the name of its file; null where nothing is to be said.</summary>
    public string? Origin { get; init; }

    /// <summary>The day that the report names; null for none.</summary>
    public DateOnly? Date { get; init; }
}
