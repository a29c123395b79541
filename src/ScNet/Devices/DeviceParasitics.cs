namespace ScNet.Devices;

/// <summary>Puts the parasitic capacitances of devices onto a converter.</summary>
public static class DeviceParasitics
{
    /// <summary>The same converter with the plates of its capacitors and the junctions of its switches.</summary>
    /// <remarks>
    /// Each plate gets its fraction of the capacitance towards the body of the capacitor. The junction of a switch lies
    /// across it, its well being tied to its source: as wide as the on-resistance asks for, with the capacitance whose charge
    /// at the rated voltage is the device's. Parasitic capacitances that are there already are kept; plates of capacitors
    /// are replaced. Source: common practice, no source.
    /// </remarks>
    /// <param name="converter">The converter.</param>
    /// <param name="capacitors">The device of each capacitor, index as in <see cref="Converter.Capacitors"/>; null leaves the plates as they are.</param>
    /// <param name="switches">The device of each switch, index as in <see cref="Converter.Switches"/>; null adds no junctions.</param>
    /// <exception cref="ArgumentException">A list has the wrong length, or a null in it.</exception>
    public static Converter WithParasitics(
        this Converter converter, IReadOnlyList<CapacitorDevice>? capacitors = null, IReadOnlyList<SwitchDevice>? switches = null)
    {
        ArgumentNullException.ThrowIfNull(converter);
        capacitors = Guard.CopyIfAny(capacitors, nameof(capacitors));
        switches = Guard.CopyIfAny(switches, nameof(switches));
        RequireLength(capacitors, converter.Capacitors.Count, nameof(capacitors));
        RequireLength(switches, converter.Switches.Count, nameof(switches));
        CapacitorPlates[] plates = [.. converter.Capacitors.Select((c, i) => capacitors is null
            ? c.Plates
            : c.Plates with
            {
                BottomFarads = capacitors[i].BottomPlateFraction * c.Farads,
                TopFarads = capacitors[i].TopPlateFraction * c.Farads,
            })];
        HashSet<string> taken = [.. converter.Capacitors.Select(c => c.Name), .. converter.Switches.Select(s => s.Name),
            .. converter.Inductors.Select(l => l.Name), .. converter.Parasitics.Select(p => p.Name), .. converter.FurtherOutputs.Select(o => o.Name)];
        Parasitic[] junctions = [.. converter.Switches.Take(switches?.Count ?? 0).Select((s, i) =>
            new Parasitic(NewName($"{s.Name} junction", taken), s.FirstNode, s.SecondNode, JunctionFarads(s, switches![i])))];
        return converter.WithParasitics(plates, [.. converter.Parasitics, .. junctions]);
    }

    /// <summary>The capacitance of the junction of a switch of a device in farads (F).</summary>
    internal static double JunctionFarads(Switch @switch, SwitchDevice device)
    {
        double widthMicrometres = device.OnResistanceOhmMicrometres / @switch.Ohms;
        return widthMicrometres * device.JunctionChargeCoulombsPerMicrometre / device.RatedVolts;
    }

    private static string NewName(string name, HashSet<string> taken)
    {
        while (!taken.Add(name))
        {
            name += "'";
        }

        return name;
    }

    private static void RequireLength<T>(IReadOnlyList<T>? devices, int length, string parameterName)
    {
        if (devices is not null && devices.Count != length)
        {
            throw new ArgumentException($"Expected {length} devices, one per element, but got {devices.Count}.", parameterName);
        }
    }
}
