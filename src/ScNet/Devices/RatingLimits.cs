using System.Collections.Frozen;

namespace ScNet.Devices;

/// <summary>Which devices a converter's elements are made of, and how many may be in series.</summary>
public sealed class RatingLimits
{
    /// <summary>The source of devices of which only the rating is told.</summary>
    internal const string Normalised = "normalised";

    /// <summary>The device of every switch that <see cref="SwitchDevices"/> does not name.</summary>
    public required SwitchDevice Switch { get; init; }

    /// <summary>The device of every capacitor that <see cref="CapacitorDevices"/> does not name.</summary>
    public required CapacitorDevice Capacitor { get; init; }

    /// <summary>The devices of single switches, by name.</summary>
    public IReadOnlyDictionary<string, SwitchDevice> SwitchDevices { get; init => field = value.ToFrozenDictionary(); } = FrozenDictionary<string, SwitchDevice>.Empty;

    /// <summary>The devices of single capacitors, by name.</summary>
    public IReadOnlyDictionary<string, CapacitorDevice> CapacitorDevices { get; init => field = value.ToFrozenDictionary(); } = FrozenDictionary<string, CapacitorDevice>.Empty;

    /// <summary>The most switch devices in series; 3 where none is given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is below 1.</exception>
    public int MaximumSwitchesInSeries { get; init => field = Guard.AtLeastOne(value, nameof(MaximumSwitchesInSeries)); } = Process.DefaultSwitchesInSeries;

    /// <summary>The most capacitors in series; 2 where none is given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is below 1.</exception>
    public int MaximumCapacitorsInSeries { get; init => field = Guard.AtLeastOne(value, nameof(MaximumCapacitorsInSeries)); } = Process.DefaultCapacitorsInSeries;

    /// <summary>Whether stacks must also withstand the voltages at the changes of mode; true where nothing is said.</summary>
    public bool CountsChanges { get; init; } = true;

    /// <summary>Switches and capacitors of one rating of which nothing else is told, as many in series as it takes.</summary>
    /// <remarks>What they cost is 1 of each unit: areas and charges of such limits compare only with those of others like them.</remarks>
    /// <param name="ratedVolts">The voltage in volts (V) that each withstands.</param>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is not positive, or not from 1e-60 to 1e60.</exception>
    public static RatingLimits OfRating(double ratedVolts) => new()
    {
        Switch = new SwitchDevice
        {
            Name = "switch",
            Source = Normalised,
            RatedVolts = ratedVolts,
            GateDriveVolts = ratedVolts,
            GateRatedVolts = ratedVolts,
            OnResistanceOhmMicrometres = 1,
            GateChargeCoulombsPerMicrometre = 1,
            JunctionChargeCoulombsPerMicrometre = 1,
            AreaSquareMetresPerMicrometre = 1,
        },
        Capacitor = new CapacitorDevice { Name = "capacitor", Source = Normalised, RatedVolts = ratedVolts, FaradsPerSquareMetre = 1 },
        MaximumSwitchesInSeries = int.MaxValue,
        MaximumCapacitorsInSeries = int.MaxValue,
    };

    /// <summary>The devices and the longest stacks.</summary>
    public override string ToString() =>
        FormattableString.Invariant($"switches {Switch}, at most {MaximumSwitchesInSeries} in series; capacitors {Capacitor}, at most {MaximumCapacitorsInSeries} in series");
}
