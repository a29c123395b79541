using ScNet.Analysis;

namespace ScNet.Cli.Rendering;

/// <summary>The inductors of a mode for people.</summary>
internal static class InductorText
{
    /// <summary>What fixed the last of the capacitor voltages, in words.</summary>
    public static string Balance(VoltageBalance balance) => balance switch
    {
        VoltageBalance.Averages => "averages: loops and volt-seconds",
        VoltageBalance.Ripple => "ripple of inductor currents, where averages leave them open",
        VoltageBalance.Losses => "losses, where averages and ripple leave them open",
        _ => "a controller, where nothing else does or against it",
    };

    /// <summary>Writes the table; nothing where there are no inductors.</summary>
    public static void Write(TextWriter output, ModeAnalysis mode)
    {
        Converter converter = mode.Converter;
        if (converter.Inductors.Count == 0)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine("  Inductors: current from first to second node per unit of load current, charge likewise, voltage (first minus second) in V per V of input");
        TextTable table = new TextTable(indent: "  ")
            .Words("name").Words("first").Words("second").Figures("L").Figures("R").Figures("current")
            .Figures(AnalysisText.PerPhase(converter, "charge")).Figures(AnalysisText.PerPhase(converter, "voltage")).Figures("FSL coeff.");
        foreach (InductorAnalysis inductor in mode.Inductors)
        {
            table.Row([
                inductor.Inductor.Name,
                inductor.Inductor.FirstNode,
                inductor.Inductor.SecondNode,
                EngineeringNumber.Of(inductor.Inductor.Henries, "H"),
                EngineeringNumber.Of(inductor.Inductor.Ohms, "Ω"),
                inductor.Current.ToString(),
                .. inductor.Charge.Select(q => q.ToString()),
                .. inductor.Voltage.Select(v => v.ToString()),
                inductor.Inductor.Ohms > 0 ? inductor.FastCoefficient.ToString() : "-",
            ]);
        }

        table.Write(output);
    }
}
