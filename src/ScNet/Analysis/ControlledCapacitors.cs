using Fractions;

namespace ScNet.Analysis;

/// <summary>The capacitors that a controller outside the netlist holds.</summary>
internal static class ControlledCapacitors
{
    /// <summary>Their positions in <see cref="Converter.Capacitors"/>, and the share of the input at which they are held.</summary>
    public static (int Capacitor, Fraction Voltage)[] Of(Converter converter)
    {
        List<(int Capacitor, Fraction Voltage)>? found = null;
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            if (converter.Capacitors[i].Controlled is { } voltage)
            {
                (found ??= []).Add((i, voltage));
            }
        }

        return found is null ? [] : [.. found];
    }
}
