using ScNet.Devices;

namespace ScNet.Cli;

/// <summary>Switches of which the gate alone is told.</summary>
/// <param name="DriveVolts">The gate-source voltage in volts (V) that turns one on.</param>
/// <param name="RatedVolts">The gate-source voltage in volts (V) that a gate withstands; null for any.</param>
/// <param name="PTypes">The names of the switches that are p-type.</param>
internal sealed record GateChoice(double DriveVolts, double? RatedVolts, IReadOnlyList<string> PTypes)
{
    // the largest voltage that the library takes: one that nothing exceeds
    private const double AnyVolts = 1e60;

    /// <summary>The limits of a converter; null where a name is none of its switches', which goes to <paramref name="error"/>.</summary>
    /// <param name="path">The file.</param>
    /// <param name="converter">Its converter.</param>
    /// <param name="ratedVolts">What each switch withstands in volts (V); null for any voltage, so that none is a stack.</param>
    /// <param name="error">Receives what is wrong.</param>
    public RatingLimits? Limits(string path, Converter converter, double? ratedVolts, TextWriter error)
    {
        string[] unknown = [.. PTypes.Where(name => !converter.Switches.Any(s => s.Name == name))];
        if (unknown.Length > 0)
        {
            error.WriteLine(Printable.Of(
                $"{path}: Expected names of switches after --p-type, but '{converter.Name}' has no switch {string.Join(", ", unknown.Select(n => $"'{n}'"))}. Its switches: {string.Join(", ", converter.Switches.Select(s => s.Name))}."));
            return null;
        }

        RatingLimits limits = RatingLimits.OfRating(ratedVolts ?? AnyVolts);
        SwitchDevice nType = limits.Switch with { Name = "n-type", ThresholdVolts = 0, GateDriveVolts = DriveVolts, GateRatedVolts = RatedVolts ?? AnyVolts };
        return new RatingLimits
        {
            Switch = nType,
            SwitchDevices = PTypes.Distinct().ToDictionary(name => name, _ => nType with { Name = "p-type", Polarity = DevicePolarity.PType }),
            Capacitor = limits.Capacitor,
            MaximumSwitchesInSeries = limits.MaximumSwitchesInSeries,
            MaximumCapacitorsInSeries = limits.MaximumCapacitorsInSeries,
        };
    }
}
