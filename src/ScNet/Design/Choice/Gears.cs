using Fractions;
using ScNet.Analysis;
using ScNet.Reconfiguration;

namespace ScNet.Design.Choice;

/// <summary>One converter with a mode per ratio, from several of one ratio or from one of very many.</summary>
internal static class Gears
{
    /// <summary>Networks laid over one another; the modes are named by their ratios, by their networks where two have the same.</summary>
    public static Converter Of(IReadOnlyList<Converter> networks, IOverlayMethod overlays)
    {
        string[] ratios = [.. networks.Select(n => ModeAnalysis.Of(n).Ratio.ToString())];
        string[] names = ratios.Distinct().Count() == ratios.Length ? ratios : [.. networks.Select(n => n.Name)];
        Converter overlaid = overlays.Lay($"Gears {string.Join(", ", names)}", networks).Converter;
        return overlaid.WithModes([.. overlaid.Modes.Select((m, i) => (names[i], m.ClosedPhases))]);
    }

    /// <summary>The modes of a converter whose ratio lies in a range, and the least ratio above it, without the switches that they leave open.</summary>
    public static Converter? Within(Converter converter, Interval<Fraction> ratios)
    {
        ModeAnalysis[] all = [.. ConverterAnalysis.Of(converter).Results.Where(m => m.Ratio.TryGetFraction(out _))];
        Fraction[] covering = [.. all.Select(m => m.Ratio.ToFraction()).Where(r => r >= ratios.Maximum!.Value)];
        ModeAnalysis[] kept = [.. all.Where(m => m.Ratio.ToFraction() >= ratios.Minimum!.Value && (covering.Length == 0 || m.Ratio.ToFraction() <= covering.Min()))];
        if (kept.Length == 0)
        {
            return null;
        }

        int[] used = [.. Enumerable.Range(0, converter.Switches.Count).Where(s => kept.Any(m => m.Mode.ClosedPhases[s].Count > 0))];
        ConverterBuilder builder = Converter.Create($"{converter.Name}, gears {string.Join(", ", kept.Select(m => m.Mode.Name))}")
            .Input(converter.InputNode).Output(converter.OutputNode, converter.Load).Duties([.. converter.Phases.Select(p => p.Duty)]);
        foreach (Capacitor c in converter.Capacitors)
        {
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode, c.Farads, c.EsrOhms);
        }

        foreach (Switch s in used.Select(s => converter.Switches[s]))
        {
            builder.Switch(s.Name, s.FirstNode, s.SecondNode, PhaseSet.None, s.Ohms);
        }

        foreach (ModeAnalysis mode in kept)
        {
            builder.Mode(mode.Mode.Name, [.. used.Select(s => (converter.Switches[s].Name, mode.Mode.ClosedPhases[s]))]);
        }

        return builder.Build();
    }
}
