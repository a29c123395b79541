using ScNet.Analysis;
using ScNet.Results.Pages;

namespace ScNet.Cli.Rendering;

/// <summary>The analyses of one file for people.</summary>
internal static class AnalysisText
{
    private const double ExampleFrequencyHz = 1e6;

    /// <summary>Writes the analyses; whether every mode that has one also has the impedance asked for.</summary>
    public static bool Write(TextWriter output, string path, Converter converter, IEnumerable<ModeOutcome> modes, double[] frequenciesHz)
    {
        output.WriteLine(Printable.Of($"{converter.Name} ({path})"));
        output.WriteLine(
            $"{Count(converter.Capacitors.Count, "capacitor", "capacitors")}, "
            + (converter.Inductors.Count > 0 ? $"{Count(converter.Inductors.Count, "inductor", "inductors")}, " : string.Empty)
            + $"{Count(converter.Switches.Count, "switch", "switches")}, "
            + $"{converter.Phases.Count} phases, {Count(converter.Modes.Count, "mode", "modes")}");
        string load = converter.Load == LoadKind.Stiff ? "stiff" : "current";
        output.WriteLine(Printable.Of($"Input node {converter.InputNode}, output node {converter.OutputNode} ({load} load)"));
        output.WriteLine(Printable.Of($"Phases: {string.Join(", ", converter.Phases.Select(Describe))}"));
        WriteDiagnostics(output, converter.Warnings);
        bool isComplete = true;
        foreach (ModeOutcome mode in modes)
        {
            output.WriteLine();
            output.WriteLine(Printable.Of($"Mode {mode.Mode.Name}"));
            if (mode.Analysis is { } analysis)
            {
                WriteSummary(output, analysis);
                WriteCapacitors(output, analysis);
                InductorText.Write(output, analysis);
                WriteSwitches(output, analysis);
                OutputsText.Write(output, analysis);
                isComplete &= ImpedanceText.Write(output, mode, frequenciesHz);
            }
            else
            {
                output.WriteLine("  No result:");
            }

            WriteDiagnostics(output, mode.Diagnostics.Except(converter.Warnings));
        }

        return isComplete;
    }

    private static void WriteSummary(TextWriter output, ModeAnalysis mode)
    {
        string decidedBy = mode.ChargeFlow.DeterminedBy == FlowDetermination.ComponentValues ? "topology and component values"
            : mode.ChargeFlow.Switches.Concat([mode.ChargeFlow.Input, mode.ChargeFlow.Output]).All(charges => charges.All(q => q.IsExact)) ? "topology alone"
            : "topology alone for capacitors, by resistances too for switches and ports";
        output.WriteLine($"  Ideal ratio           {QuantityText.WithDecimal(mode.Ratio)} V/V");
        if (mode.Converter.Inductors.Count > 0)
        {
            output.WriteLine($"  Voltages fixed by     {InductorText.Balance(mode.Balance)}");
        }

        if (!mode.CarriesLoad)
        {
            output.WriteLine("  Charge and limits     none: at constant inductor currents no charge balances while the output takes some");
            return;
        }

        if (mode.ChargeSharing is { } sharing)
        {
            output.WriteLine($"  Charge sharing        {Falling(sharing.OhmsAtOneHertz)}{(sharing.OhmsAtOneHertz > 0 || mode.Converter.Capacitors.Count == 0 ? string.Empty : ": all capacitors are charged softly")}");
            output.WriteLine($"  All in impulses       {Falling(mode.SlowSwitchingLimit.OhmsAtOneHertz)} (slow-switching limit without the steady share of held currents)");
        }
        else
        {
            output.WriteLine($"  Slow-switching limit  {Falling(mode.SlowSwitchingLimit.OhmsAtOneHertz)}");
        }

        output.WriteLine($"  Fast-switching limit  {EngineeringNumber.Of(mode.FastSwitchingLimit.Ohms, "Ω")}");
        output.WriteLine($"  Charges decided by    {decidedBy}");
        output.WriteLine($"  Charge from input     {Phases(mode.ChargeFlow.Input)}");
        output.WriteLine($"  Charge to output      {Phases(mode.ChargeFlow.Output)}");
    }

    private static string Falling(double ohmsAtOneHertz) => EngineeringNumber.Of(ohmsAtOneHertz, "Ω")
        + (ohmsAtOneHertz > 0 ? $" at 1 Hz, falling as 1/f: {EngineeringNumber.Of(ohmsAtOneHertz / ExampleFrequencyHz, "Ω")} at 1 MHz" : string.Empty);

    private static void WriteCapacitors(TextWriter output, ModeAnalysis mode)
    {
        Converter converter = mode.Converter;
        if (converter.Capacitors.Count == 0)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine("  Capacitors: voltage in V per V of input, charge into the positive plate per unit of output charge");
        TextTable table = new TextTable(indent: "  ")
            .Words("name").Words("plate +").Words("bottom").Figures("C").Figures("ESR")
            .Figures("voltage").Figures(PerPhase(converter, "charge"))
            .Figures(mode.ChargeSharing is null ? ["SSL coeff."] : ["sharing", "impulses"]).Figures("FSL coeff.");
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            Capacitor capacitor = converter.Capacitors[c];
            table.Row([
                capacitor.Name,
                capacitor.PositiveNode,
                capacitor.BottomNode,
                EngineeringNumber.Of(capacitor.Farads, "F"),
                EngineeringNumber.Of(capacitor.EsrOhms, "Ω"),
                mode.IdealPoint.CapacitorVoltages[c] + (capacitor.Controlled is null ? string.Empty : " (controlled)"),
                .. mode.ChargeFlow.Capacitors[c].Select(q => q.ToString()),
                .. mode.ChargeSharing is { } sharing ? [sharing.Coefficients[c].ToString()] : Array.Empty<string>(),
                mode.SlowSwitchingLimit.Coefficients[c].ToString(),
                capacitor.EsrOhms > 0 ? mode.FastSwitchingLimit.CapacitorCoefficients[c].ToString() : "-",
            ]);
        }

        table.Write(output);
    }

    private static void WriteSwitches(TextWriter output, ModeAnalysis mode)
    {
        Converter converter = mode.Converter;
        if (converter.Switches.Count == 0)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine("  Switches: charge from first to second node per unit of output charge, blocking voltage (first minus second) in V per V of input");
        TextTable table = new TextTable(indent: "  ")
            .Words("name").Words("first").Words("second").Figures("R on").Words("closed in")
            .Figures(PerPhase(converter, "charge")).Figures(PerPhase(converter, "blocks")).Figures("peak")
            .Words("both ways").Figures("FSL coeff.");
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Switch @switch = converter.Switches[s];
            PhaseSet closed = mode.Mode.ClosedPhases[s];
            PhaseValues blocks = mode.BlockingVoltages.Switches[s];
            table.Row([
                @switch.Name,
                @switch.FirstNode,
                @switch.SecondNode,
                EngineeringNumber.Of(@switch.Ohms, "Ω"),
                closed.Count == 0 ? "none" : string.Join(",", closed),
                .. mode.ChargeFlow.Switches[s].Select(q => q.ToString()),
                .. blocks.Select(v => v.ToString()),
                mode.BlockingVoltages.Peaks[s].ToString(),
                BothWays(blocks),
                mode.FastSwitchingLimit.SwitchCoefficients[s].ToString(),
            ]);
        }

        table.Write(output);
    }

    private static void WriteDiagnostics(TextWriter output, IEnumerable<Diagnostic> diagnostics)
    {
        foreach (Diagnostic diagnostic in diagnostics)
        {
            output.WriteLine(Printable.Of($"  {diagnostic}"));
        }
    }

    private static string BothWays(PhaseValues blocks)
    {
        bool positive = blocks.Any(v => v.TryGetSign(out int sign) && sign > 0);
        bool negative = blocks.Any(v => v.TryGetSign(out int sign) && sign < 0);
        return positive && negative ? "yes" : blocks.All(v => v.IsDetermined) ? "no" : "?";
    }

    private static string Phases(PhaseValues values) =>
        string.Join(", ", values.Select((value, j) => $"{value} in phase {j + 1}"));

    private static string Describe(Phase phase)
    {
        string number = phase.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        string name = phase.Name == number ? number : $"{number} {phase.Name}";
        return $"{name} (duty {Quantity.Exact(phase.Duty)})";
    }

    public static IEnumerable<string> PerPhase(Converter converter, string header) =>
        converter.Phases.Select(p => $"{header} {p.Number}");

    private static string Count(int count, string one, string many) => $"{count} {(count == 1 ? one : many)}";
}
