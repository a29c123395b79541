namespace ScNet.Devices;

/// <summary>Which kinds a converter's elements are made of, and how many may be in series.</summary>
public sealed class RatingLimits
{
    /// <summary>The kind of every switch that <see cref="SwitchKinds"/> does not name.</summary>
    public required SwitchKind Switch { get; init; }

    /// <summary>The kind of every capacitor that <see cref="CapacitorKinds"/> does not name.</summary>
    public required CapacitorKind Capacitor { get; init; }

    /// <summary>The kinds of single switches, by name.</summary>
    public IReadOnlyDictionary<string, SwitchKind> SwitchKinds { get; init; } = new Dictionary<string, SwitchKind>();

    /// <summary>The kinds of single capacitors, by name.</summary>
    public IReadOnlyDictionary<string, CapacitorKind> CapacitorKinds { get; init; } = new Dictionary<string, CapacitorKind>();

    /// <summary>The most switch devices in series; 3 where none is given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is below 1.</exception>
    public int MostSwitchesInSeries { get; init => field = AtLeastOne(value); } = 3;

    /// <summary>The most capacitors in series; 2 where none is given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is below 1.</exception>
    public int MostCapacitorsInSeries { get; init => field = AtLeastOne(value); } = 2;

    /// <summary>Whether stacks must also stand the voltages at the changes of mode; true where nothing is said.</summary>
    public bool CountsChanges { get; init; } = true;

    /// <summary>The kinds and the longest stacks.</summary>
    public override string ToString() =>
        FormattableString.Invariant($"switches {Switch}, at most {MostSwitchesInSeries} in series; capacitors {Capacitor}, at most {MostCapacitorsInSeries} in series");

    private static int AtLeastOne(int value)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(value, 1);
        return value;
    }
}
