using System.Text;
using ScNet.Netlists;

namespace ScNet.Design.Sizing;

/// <summary>Writes a sized converter as a netlist document with remarks.</summary>
internal static class SizedNetlist
{
    /// <summary>The document.</summary>
    public static string Of(SizedDesign design)
    {
        StringBuilder text = new();
        Line(text, $"area {UnitText.Of(design.Converter.AreaSquareMetres * 1e6, "mm²")}, {UnitText.Percent(design.CapacitorShare)} of it capacitors");
        foreach ((Capacitor capacitor, int i) in design.Converter.Converter.Capacitors.Select((c, i) => (c, i)))
        {
            Devices.StackedCapacitor stack = design.Converter.Capacitors[i];
            Line(text, $"{capacitor.Name}: {stack.Count} × {stack.Device}, {UnitText.Of(stack.AreaOfEachSquareMetres * 1e12, "µm²")} each");
        }

        foreach ((Switch @switch, int s) in design.Converter.Converter.Switches.Select((s, i) => (s, i)))
        {
            Devices.StackedSwitch stack = design.Converter.Switches[s];
            Line(text, $"{@switch.Name}: {stack.Count} × {stack.Device}, {UnitText.Of(stack.WidthOfEachMicrometres, "µm")} wide each");
        }

        return text.Append('\n').Append(NetlistWriter.ToToml(design.Converter.Converter)).ToString();
    }

    // a name may hold anything, but a remark ends with its line
    private static void Line(StringBuilder text, string remark) =>
        text.Append("# ").Append(string.Concat(remark.Select(c => char.IsControl(c) ? ' ' : c))).Append('\n');
}
