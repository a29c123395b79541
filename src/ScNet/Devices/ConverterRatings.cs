using ScNet.Stress;

namespace ScNet.Devices;

/// <summary>Every element of a converter against the rating of its device, in every mode and at every change.</summary>
public sealed class ConverterRatings
{
    private ConverterRatings(ConverterStress stress, RatingLimits limits)
    {
        Stress = stress;
        Limits = limits;
        Converter converter = stress.Analysis.Converter;
        Switches = new NamedList<SwitchRating>([.. converter.Switches.Select((s, i) => Rate(i, s))], converter.Switches.Names);
        Capacitors = new NamedList<CapacitorRating>([.. converter.Capacitors.Select((c, i) => Rate(i, c))], converter.Capacitors.Names);
    }

    /// <summary>The stress that is rated.</summary>
    public ConverterStress Stress { get; }

    /// <summary>The devices and limits.</summary>
    public RatingLimits Limits { get; }

    /// <summary>The rating of each switch, by name and by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<SwitchRating> Switches { get; }

    /// <summary>The rating of each capacitor, by name and by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<CapacitorRating> Capacitors { get; }

    /// <summary>Whether every element is within its rating or has a stack that is allowed.</summary>
    public bool IsAllowed => Switches.Select(s => s.Overall).Concat(Capacitors.Select(c => c.Overall))
        .All(v => v.Outcome is RatingOutcome.WithinRating or RatingOutcome.NeedsStack);

    /// <summary>The area of all switches in square metres (m²), with the netlist's on-resistances.</summary>
    public double SwitchAreaSquareMetres => Switches.Sum(s => s.Stack.AreaSquareMetres);

    /// <summary>The area of all capacitors in square metres (m²), with the netlist's capacitances.</summary>
    public double CapacitorAreaSquareMetres => Capacitors.Sum(c => c.Stack.AreaSquareMetres);

    /// <summary>Rates a converter.</summary>
    /// <param name="stress">Its stress.</param>
    /// <param name="limits">The devices and limits.</param>
    /// <exception cref="ArgumentException">The limits name a switch or capacitor that the converter does not have.</exception>
    public static ConverterRatings Of(ConverterStress stress, RatingLimits limits)
    {
        ArgumentNullException.ThrowIfNull(stress);
        ArgumentNullException.ThrowIfNull(limits);
        foreach (string name in limits.SwitchDevices.Keys)
        {
            stress.Analysis.Converter.Switches.PositionOf(name);
        }

        foreach (string name in limits.CapacitorDevices.Keys)
        {
            stress.Analysis.Converter.Capacitors.PositionOf(name);
        }

        return new ConverterRatings(stress, limits);
    }

    /// <summary>Whether all elements are allowed, and the verdicts.</summary>
    public override string ToString() =>
        $"{Stress.Analysis.Converter.Name}: {(IsAllowed ? "allowed" : "not allowed")}; {string.Join("; ", Switches.Select(s => s.Overall).Concat(Capacitors.Select(c => c.Overall)))}";

    private SwitchRating Rate(int index, Switch @switch)
    {
        SwitchDevice device = Limits.SwitchDevices.GetValueOrDefault(@switch.Name) ?? Limits.Switch;
        IReadOnlyList<RatingVerdict> modes = [.. Stress.Modes.Select(m => Verdict(m.Switches[index], m.Mode))];
        RatingVerdict? atChanges = Limits.CountsChanges && Stress.Changes.Count > 0 ? Verdict(Stress.SwitchesAtChanges[index], null) : null;
        SwitchStress worst = SwitchStress.Worst(Stress.Analysis.Converter, index, atChanges is null
            ? [Stress.Switches[index]]
            : [Stress.Switches[index], Stress.SwitchesAtChanges[index]]);
        RatingVerdict overall = Verdict(worst, null);
        return new SwitchRating(@switch, device, modes, atChanges, overall, new StackedSwitch(device, overall.StackCount, @switch.Ohms));

        RatingVerdict Verdict(SwitchStress stress, Mode? mode) => RatingVerdict.Of(
            @switch.Name, mode, stress is { IsDetermined: false, Peak: null } ? null : stress.Magnitude, !stress.IsDetermined, stress.Places,
            device.ExactRating, Limits.MaximumSwitchesInSeries);
    }

    private CapacitorRating Rate(int index, Capacitor capacitor)
    {
        CapacitorDevice device = Limits.CapacitorDevices.GetValueOrDefault(capacitor.Name) ?? Limits.Capacitor;
        IReadOnlyList<RatingVerdict> modes = [.. Stress.Modes.Select(m => Verdict(m.Capacitors[index], m.Mode))];
        RatingVerdict overall = Verdict(Stress.Capacitors[index], null);
        return new CapacitorRating(capacitor, device, modes, overall, new StackedCapacitor(device, overall.StackCount, capacitor.Farads));

        RatingVerdict Verdict(CapacitorStress stress, Mode? mode) => RatingVerdict.Of(
            capacitor.Name, mode, stress.Peak is null ? null : stress.Magnitude, !stress.IsDetermined, stress.Places,
            device.ExactRating, Limits.MaximumCapacitorsInSeries);
    }
}
