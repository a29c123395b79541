using ScNet.Analysis;
using ScNet.Design;
using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Cli;

/// <summary>A mode at equal silicon: one kind of switch and one of capacitor, of the rating of the comparison, as many in series as it takes.</summary>
/// <remarks>
/// The kinds are without dimension: the area that gives 1 F, or 1 S, in one device counts as 1. So the totals
/// of the comparison are what the areas give in single devices, and where nothing is stacked the limits are
/// those of the best split.
/// </remarks>
internal sealed class EqualSilicon
{
    private EqualSilicon(SiliconComparison comparison)
    {
        Comparison = comparison;
        Undetermined =
        [
            .. comparison.Ratings.Switches.Where(s => s.Overall.Outcome == RatingOutcome.Undetermined).Select(s => s.Switch.Name),
            .. comparison.Ratings.Capacitors.Where(c => c.Overall.Outcome == RatingOutcome.Undetermined).Select(c => c.Capacitor.Name),
        ];
    }

    public SiliconComparison Comparison { get; }

    /// <summary>The elements whose voltage nothing bounds: their stacks, and with them both limits, are lower bounds.</summary>
    public IReadOnlyList<string> Undetermined { get; }

    public bool IsLowerBound => Undetermined.Count > 0;

    /// <summary>The devices of all capacitors; no int, as a stack may be of any size.</summary>
    public long CapacitorDeviceCount => Comparison.CapacitorDeviceCount;

    /// <summary>The devices of all switches.</summary>
    public long SwitchDeviceCount => Comparison.SwitchDeviceCount;

    /// <summary>The ratings of a converter for the conditions of a comparison.</summary>
    public static ConverterRatings Rate(Converter converter, ComparisonConditions conditions)
    {
        double volts = conditions.DeviceRatingVolts;
        RatingLimits limits = new()
        {
            Switch = new SwitchKind
            {
                Name = "switch",
                Source = "normalised",
                RatedVolts = volts,
                GateDriveVolts = volts,
                GateRatedVolts = volts,
                OnResistanceOhmMicrometres = 1,
                GateChargeCoulombsPerMicrometre = 1,
                JunctionChargeCoulombsPerMicrometre = 1,
                AreaSquareMetresPerMicrometre = 1,
            },
            Capacitor = new CapacitorKind { Name = "capacitor", Source = "normalised", RatedVolts = volts, FaradsPerSquareMetre = 1 },
            MostSwitchesInSeries = int.MaxValue,
            MostCapacitorsInSeries = int.MaxValue,
        };
        InputVoltageRange input = new(conditions.InputVoltageVolts, conditions.InputVoltageVolts);
        return ConverterRatings.Of(ConverterStress.Of(ConverterAnalysis.Of(converter), input), limits);
    }

    /// <summary>One mode, which must have a result.</summary>
    public static EqualSilicon Of(ConverterRatings ratings, Mode mode, ComparisonConditions conditions) => new(SiliconComparison.Of(
        ratings, mode.Name, new SiliconTotals(conditions.TotalCapacitanceFarads, conditions.TotalConductanceSiemens, conditions.FrequencyHz)));
}
