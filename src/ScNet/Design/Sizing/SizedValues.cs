using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Design.Sizing;

/// <summary>A converter with its devices from kinds, stacks and values.</summary>
internal static class SizedValues
{
    /// <summary>Puts them together.</summary>
    /// <param name="converter">The converter, whose values are replaced.</param>
    /// <param name="process">What drives and runs it; its wiring adds to every on-resistance.</param>
    /// <param name="capacitors">Kind and stack of each capacitor.</param>
    /// <param name="switches">Kind and stack of each switch.</param>
    /// <param name="farads">The capacitance of each.</param>
    /// <param name="ohms">The on-resistance of each, without wiring.</param>
    /// <param name="inductors">The inductors.</param>
    public static SizedConverter Build(
        Converter converter,
        Process process,
        ElementOption<CapacitorDevice>[] capacitors,
        ElementOption<SwitchDevice>[] switches,
        double[] farads,
        double[] ohms,
        IReadOnlyList<InductorDevice> inductors)
    {
        StackedCapacitor[] ownCapacitors = [.. capacitors.Select((o, i) => new StackedCapacitor(o.Device, o.Count, farads[i], o.HeldVolts))];
        StackedSwitch[] ownSwitches = [.. switches.Select((o, i) => new StackedSwitch(o.Device, o.Count, ohms[i]))];
        Converter values = converter.WithValues(
            farads,
            [.. ohms.Select(r => r + process.WiringOhms)],
            [.. ownCapacitors.Select(c => c.EsrOhms)],
            inductors.Count == 0 ? null : [.. inductors.Select(l => l.Henries)],
            inductors.Count == 0 ? null : [.. inductors.Select(l => l.Ohms)]);
        return new SizedConverter(values, ownSwitches, ownCapacitors, inductors.Count == 0 ? null : inductors, process);
    }
}
