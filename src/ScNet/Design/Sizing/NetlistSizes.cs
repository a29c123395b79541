using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Design.Sizing;

/// <summary>A converter with the values of its netlist, made of the kinds of a process.</summary>
public static class NetlistSizes
{
    /// <summary>
    /// Gives every element the kind and the stack that withstand its voltages in all modes and at all changes between two in the
    /// least area, with the netlist's capacitance and on-resistance. Wiring adds to the on-resistances, series resistances of
    /// capacitors are those of the kinds, inductors those of the netlist.
    /// </summary>
    /// <param name="stress">The stress of the converter over the input voltages at which it runs.</param>
    /// <param name="process">What it may be made of.</param>
    /// <exception cref="ScNetException">No kind withstands what an element needs: <see cref="DiagnosticCodes.DeviceRatingExceeded"/>.</exception>
    public static SizedConverter Of(ConverterStress stress, Process process)
    {
        ArgumentNullException.ThrowIfNull(stress);
        ArgumentNullException.ThrowIfNull(process);
        Converter converter = stress.Analysis.Converter;
        ElementOptions options = ElementOptions.Of(stress, process);
        if (options.Findings.Any(f => f.Severity == DiagnosticSeverity.Error))
        {
            throw new ScNetException($"No devices of {process.Name} make {converter.Name}.", options.Findings);
        }

        return SizedValues.Build(
            converter,
            process,
            [.. options.Capacitors.Select((own, i) => own.MinBy(o => new StackedCapacitor(o.Device, o.Count, converter.Capacitors[i].Farads).AreaSquareMetres))],
            [.. options.Switches.Select((own, i) => own.MinBy(o => new StackedSwitch(o.Device, o.Count, converter.Switches[i].Ohms).AreaSquareMetres))],
            [.. converter.Capacitors.Select(c => c.Farads)],
            [.. converter.Switches.Select(s => s.Ohms)],
            [.. converter.Inductors.Select(l => new InductorDevice { Name = l.Name, Source = "netlist", Henries = l.Henries, Ohms = l.Ohms })]);
    }
}
