using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Cli;

/// <summary>What elements are made of, as a command line tells it: the kinds of a process, or a rating alone.</summary>
/// <param name="Process">The process; null where none is told.</param>
/// <param name="RatedVolts">What each switch and capacitor withstands; null where none is told.</param>
internal sealed record DeviceChoice(Process? Process, double? RatedVolts)
{
    /// <summary>What is told of gates where there is no process; null where nothing is.</summary>
    public GateChoice? Gate { get; init; }

    /// <summary>Whether there is anything to compare with.</summary>
    public bool IsGiven => Process is not null || RatedVolts is not null || Gate is not null;

    /// <summary>Rates a converter; null where nothing is told, or no kinds serve: the reason then goes to <paramref name="error"/>.</summary>
    public ConverterRatings? Rate(string path, ConverterStress stress, TextWriter error)
    {
        if (Gate is not null)
        {
            return Gate.Limits(path, stress.Analysis.Converter, RatedVolts, error) is { } limits ? ConverterRatings.Of(stress, limits) : null;
        }

        if (Process is null)
        {
            return RatedVolts is { } volts ? ConverterRatings.Of(stress, RatingLimits.OfRating(volts)) : null;
        }

        return FileSizes.Of(path, stress, Process, error) is { } sized ? ConverterRatings.Of(stress, Limits(sized)) : null;
    }

    private RatingLimits Limits(SizedConverter sized) => new()
    {
        Switch = Process!.Switches[0],
        Capacitor = Process.Capacitors[0],
        SwitchDevices = sized.Converter.Switches.Zip(sized.Switches, (s, stack) => KeyValuePair.Create(s.Name, stack.Device)).ToDictionary(),
        CapacitorDevices = sized.Converter.Capacitors.Zip(sized.Capacitors, (c, stack) => KeyValuePair.Create(c.Name, stack.Device)).ToDictionary(),
        MaximumSwitchesInSeries = Process.MaximumSwitchesInSeries,
        MaximumCapacitorsInSeries = Process.MaximumCapacitorsInSeries,
    };
}
