using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;

namespace ScNet.Design.Choice;

/// <summary>What widths and areas come out as at a corner of the process.</summary>
internal static class CornerSizes
{
    /// <summary>The same widths, areas and stacks with the values that they have at a corner. Parts beside the chip stay as they are.</summary>
    public static SizedConverter Of(SizedConverter sized, Corner corner)
    {
        Process process = sized.Process.At(corner);
        SwitchDevice[] switches = [.. sized.Switches.Select(s => process.Switches.First(d => d.Name == s.Device.Name))];
        return SizedValues.Build(
            sized.Converter,
            process,
            [.. sized.Capacitors.Select(c => new ElementOption<CapacitorDevice>(process.Capacitors.First(d => d.Name == c.Device.Name), c.Count, c.HeldVolts))],
            [.. sized.Switches.Select((s, i) => new ElementOption<SwitchDevice>(switches[i], s.Count))],
            [.. sized.Capacitors.Select(c => c.Farads * corner.CapacitanceFactor)],
            [.. sized.Switches.Select((s, i) => s.Ohms * switches[i].OnResistanceOhmMicrometres / s.Device.OnResistanceOhmMicrometres)],
            [.. sized.Inductors]);
    }
}
