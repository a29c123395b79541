using System.Globalization;
using System.Text;

namespace ScNet.Benchmarks;

/// <summary>The netlist document of a converter with one mode, one line per element.</summary>
internal static class LadderDocument
{
    public static string Of(Converter converter)
    {
        StringBuilder text = new();
        text.AppendLine(CultureInfo.InvariantCulture, $"name = \"{converter.Name}\"");
        text.AppendLine(CultureInfo.InvariantCulture, $"input = \"{converter.InputNode}\"");
        text.AppendLine(CultureInfo.InvariantCulture, $"output = \"{converter.OutputNode}\"");
        text.AppendLine("[capacitors]");
        foreach (Capacitor c in converter.Capacitors)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"{c.Name} = {{ between = [\"{c.PositiveNode}\", \"{c.BottomNode}\"], farads = {c.Farads:R} }}");
        }

        text.AppendLine("[switches]");
        foreach ((Switch s, PhaseSet on) in converter.Switches.Zip(converter.Modes[0].ClosedPhases))
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"{s.Name} = {{ between = [\"{s.FirstNode}\", \"{s.SecondNode}\"], ohms = {s.Ohms:R}, on = [{string.Join(", ", on)}] }}");
        }

        return text.ToString();
    }
}
