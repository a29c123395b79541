using ScNet.Devices;

namespace ScNet.Design.Sizing;

/// <summary>The kinds and stacks that withstand the voltage of each element.</summary>
internal sealed class ElementOptions
{
    private ElementOptions(ElementOption<CapacitorDevice>[][] capacitors, ElementOption<SwitchDevice>[][] switches, IReadOnlyList<Diagnostic> findings)
    {
        Capacitors = capacitors;
        Switches = switches;
        Findings = findings;
    }

    /// <summary>Those of each capacitor; empty where nothing withstands it.</summary>
    public ElementOption<CapacitorDevice>[][] Capacitors { get; }

    /// <summary>Those of each switch; empty where nothing withstands it.</summary>
    public ElementOption<SwitchDevice>[][] Switches { get; }

    /// <summary>The elements that nothing withstands, as errors, and those of which some voltage is undetermined, as warnings.</summary>
    public IReadOnlyList<Diagnostic> Findings { get; }

    /// <summary>Rates every kind of a process at every element.</summary>
    /// <param name="stress">What the elements must withstand.</param>
    /// <param name="process">The kinds.</param>
    /// <param name="heldVolts">The voltages of each capacitor at the points, those that are determined; null where none are known.</param>
    public static ElementOptions Of(Stress.ConverterStress stress, Process process, double[][]? heldVolts = null)
    {
        Converter converter = stress.Analysis.Converter;
        int rounds = Math.Max(process.Switches.Count, process.Capacitors.Count);
        ConverterRatings[] ratings = [.. Enumerable.Range(0, rounds).Select(k => ConverterRatings.Of(stress, new RatingLimits
        {
            Switch = process.Switches[Math.Min(k, process.Switches.Count - 1)],
            Capacitor = process.Capacitors[Math.Min(k, process.Capacitors.Count - 1)],
            MaximumSwitchesInSeries = process.MaximumSwitchesInSeries,
            MaximumCapacitorsInSeries = process.MaximumCapacitorsInSeries,
        }))];
        List<Diagnostic> findings = [];
        ElementOption<CapacitorDevice>[][] capacitors = [.. converter.Capacitors.Select((c, i) => Array.ConvertAll(Allowed(
            c.Name, [.. ratings.Take(process.Capacitors.Count).Select(r => (r.Capacitors[i].Device, r.Capacitors[i].Overall))], findings), o => Held(o, heldVolts?[i] ?? [])))];
        ElementOption<SwitchDevice>[][] switches = [.. converter.Switches.Select((s, i) => Allowed(
            s.Name, [.. ratings.Take(process.Switches.Count).Select(r => (r.Switches[i].Device, r.Switches[i].Overall))], findings))];
        return new ElementOptions(capacitors, switches, [.. findings]);
    }

    // at the point where the area gives least
    private static ElementOption<CapacitorDevice> Held(ElementOption<CapacitorDevice> option, double[] volts) => option.Device.DensityAgainstBias.Count == 0 || volts.Length == 0
        ? option
        : option with { HeldVolts = volts.MinBy(v => option.Device.FaradsPerSquareMetreAt(v / option.Count)) };

    // what is undetermined counts with what is known of it
    private static ElementOption<T>[] Allowed<T>(string name, (T Device, RatingVerdict Verdict)[] rated, List<Diagnostic> findings)
    {
        ElementOption<T>[] allowed = [.. rated.Where(r => r.Verdict.Outcome != RatingOutcome.NotAllowed).Select(r => new ElementOption<T>(r.Device, r.Verdict.StackCount))];
        if (allowed.Length == 0)
        {
            (_, RatingVerdict best) = rated.MinBy(r => r.Verdict.StackCount);
            findings.Add(new Diagnostic(DiagnosticSeverity.Error, DiagnosticCodes.DeviceRatingExceeded, $"No kind of the process withstands what {name} needs; the nearest is {best}. Allow more in series, or add a kind of a higher rating.", [name]));
        }
        else if (rated.Any(r => r.Verdict.IsLowerBound))
        {
            findings.Add(new Diagnostic(DiagnosticSeverity.Warning, DiagnosticCodes.StressUndetermined, $"Nothing bounds the voltage of {name} everywhere: {rated[0].Verdict}. Its stack is a lower bound.", [name]));
        }

        return allowed;
    }
}
