using System.Text;
using ScNet.Netlists;

namespace ScNet.Design.Sizing;

/// <summary>Writes a sized converter as a netlist document with remarks.</summary>
internal static class SizedNetlist
{
    /// <summary>The document.</summary>
    public static string Of(Losses.SizedConverter sized)
    {
        StringBuilder text = new();
        Line(text, $"area {UnitText.Of(sized.AreaSquareMetres * 1e6, "mm²")}");
        foreach ((Capacitor capacitor, int i) in sized.Converter.Capacitors.Select((c, i) => (c, i)))
        {
            Devices.StackedCapacitor stack = sized.Capacitors[i];
            Line(text, $"{capacitor.Name}: {stack.Count} × {stack.Device}, {UnitText.Of(stack.AreaOfEachSquareMetres * 1e12, "µm²")} each");
        }

        foreach ((Switch @switch, int s) in sized.Converter.Switches.Select((s, i) => (s, i)))
        {
            Devices.StackedSwitch stack = sized.Switches[s];
            Line(text, $"{@switch.Name}: {stack.Count} × {stack.Device}, {UnitText.Of(stack.WidthOfEachMicrometres, "µm")} wide each");
        }

        return text.Append('\n').Append(NetlistWriter.ToToml(sized.Converter)).ToString();
    }

    // a name may hold anything, but a remark ends with its line
    private static void Line(StringBuilder text, string remark) =>
        text.Append("# ").Append(string.Concat(remark.Select(c => char.IsControl(c) ? ' ' : c))).Append('\n');
}
