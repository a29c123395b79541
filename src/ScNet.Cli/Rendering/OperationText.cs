using System.Globalization;
using ScNet.Results;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;
using ScNet.Results.Pages;

namespace ScNet.Cli.Rendering;

/// <summary>Operating points for people.</summary>
internal static class OperationText
{
    // what is smaller against the input voltage or the load current is rounding
    private const double Rounding = 1e-12;

    public static void Write(TextWriter output, OperatingConditions conditions, IEnumerable<ResultRow<OperatedMode>> rows)
    {
        bool first = true;
        foreach (ResultRow<OperatedMode> row in rows.Where(r => r.Outcome is not null))
        {
            if (first)
            {
                output.WriteLine(
                    $"{Of(conditions.Point.InputVoltageVolts, "V")} input, {Of(conditions.Point.LoadCurrentAmperes, "A")} load, {Of(conditions.Point.FrequencyHz, "Hz")}, "
                    + (conditions.DeadTimeSeconds is { } seconds ? $"{Of(seconds, "s")} of dead time in each phase" : "no dead time"));
                first = false;
            }

            output.WriteLine();
            output.WriteLine(Printable.Of($"{row.Outcome!.Converter.Name} ({row.File}), mode {row.Outcome.Mode.Name}"));
            if (row.Result is { Steady: { } steady } operated)
            {
                WriteSummary(output, steady);
                WriteSwitches(output, steady);
                WriteCapacitors(output, steady);
                WriteInductors(output, steady);
                WriteDiodes(output, steady);
                WriteParasitics(output, steady);
                if (operated.Budget is { } budget)
                {
                    LossText.Write(output, budget);
                }
            }
            else
            {
                output.WriteLine("  No result");
            }

            // the warnings of the netlist once, below its first mode
            IEnumerable<Diagnostic> said = row.Outcome.Mode.Index == 0 ? [] : row.Outcome.Converter.Warnings.Except(row.Outcome.Diagnostics);
            foreach (Diagnostic diagnostic in row.Diagnostics.Except(said))
            {
                output.WriteLine(Printable.Of($"  {diagnostic}"));
            }
        }
    }

    private static void WriteSummary(TextWriter output, PeriodicSteadyState steady)
    {
        bool isStiff = steady.Converter.Load == LoadKind.Stiff;
        output.WriteLine($"  Output voltage    {Of(steady.AverageOutputVoltageVolts, "V")}, ideally {Of(steady.IdealOutputVoltageVolts, "V")}");
        output.WriteLine($"  Output ripple     {(isStiff ? "none, as the load is stiff" : Of(steady.OutputRippleVolts, "V") + " peak to peak")}");
        output.WriteLine($"  Output impedance  {Of(steady.OutputImpedanceOhms, "Ω")}");
        output.WriteLine($"  Input current     {Of(steady.AverageInputCurrentAmperes, "A")}");
        output.WriteLine($"  Input power       {Of(steady.InputPowerWatts, "W")}");
        output.WriteLine($"  Output power      {Of(steady.OutputPowerWatts, "W")}");
        output.WriteLine($"  Dissipation       {Of(steady.DissipationWatts, "W")}");
        string efficiency = steady.ResistiveEfficiency?.ToString("0.00 %", CultureInfo.InvariantCulture) ?? "none";
        output.WriteLine($"  Efficiency        {efficiency} (conduction and charge redistribution only: no gate drive, switching or leakage)");
        if (steady.IsOverloaded)
        {
            output.WriteLine(
                $"  Overload: the output voltage is pulled to zero by {Of(steady.ZeroOutputCurrentAmperes, "A")} already. "
                + "The figures extrapolate the linear model and mean nothing for a real load.");
        }
        else if (steady.IsDrivenByLoad)
        {
            output.WriteLine("  The load drives the converter: its current flows against the output voltage. For a load that takes power, change the sign.");
        }
    }

    private static void WriteSwitches(TextWriter output, PeriodicSteadyState steady)
    {
        if (steady.Switches.Count == 0)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine("  Switches: peak current from first to second node, voltage (first minus second) while open");
        TextTable table = new TextTable(indent: "  ")
            .Words("name").Figures("RMS").Figures("peak").Figures("dissipation").Words("blocks");
        for (int s = 0; s < steady.Switches.Count; s++)
        {
            SwitchOperation x = steady.Switches[s];
            table.Row([
                x.Switch.Name,
                Of(x.RmsCurrentAmperes, "A", steady.Point.LoadCurrentAmperes),
                Of(x.PeakCurrentAmperes, "A", steady.Point.LoadCurrentAmperes),
                Of(x.DissipationWatts, "W", steady.InputPowerWatts),
                steady.Mode.ClosedPhases[s].Count == steady.Converter.Phases.Count ? "-" : Blocks(x, steady.Point.InputVoltageVolts),
            ]);
        }

        table.Write(output);
        if (steady.Switches.Where((x, s) => !x.BlockingVolts.IsDetermined && steady.Mode.ClosedPhases[s].Count < steady.Converter.Phases.Count).Any())
        {
            output.WriteLine($"  ?: a side of the open switch floats in some phase{Loose(steady)}");
        }
    }

    // A side that does not float may still be connected to a capacitor that no loop charges to a definite voltage.
    private static string Loose(PeriodicSteadyState steady)
    {
        string[] open = [.. steady.Capacitors.Where(c => c.AverageVoltageVolts is null).Select(c => c.Capacitor.Name)];
        return open.Length == 0
            ? ", and nothing fixes the voltage there"
            : $", or is connected to a capacitor whose own voltage nothing fixes ({string.Join(", ", open)})";
    }

    private static string Blocks(SwitchOperation x, double largestVolts)
    {
        string range = x.BlockingWhereDeterminedVolts is { Minimum: { } minimum, Maximum: { } maximum }
            ? $"{Of(minimum, "V", largestVolts)} to {Of(maximum, "V", largestVolts)}"
            : string.Empty;
        return x.BlockingVolts.IsDetermined ? range : range.Length > 0 ? $"{range}, ?" : "?";
    }

    private static void WriteInductors(TextWriter output, PeriodicSteadyState steady)
    {
        if (steady.Inductors.Count == 0)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine("  Inductors: average and peak current from first to second node, ripple peak to peak");
        TextTable table = new TextTable(indent: "  ")
            .Words("name").Figures("average").Figures("ripple").Figures("RMS").Figures("peak").Figures("dissipation");
        foreach (InductorOperation l in steady.Inductors)
        {
            table.Row([
                l.Inductor.Name,
                Of(l.AverageCurrentAmperes, "A", steady.Point.LoadCurrentAmperes),
                Of(l.RippleAmperes, "A", steady.Point.LoadCurrentAmperes),
                Of(l.RmsCurrentAmperes, "A", steady.Point.LoadCurrentAmperes),
                Of(l.PeakCurrentAmperes, "A", steady.Point.LoadCurrentAmperes),
                Of(l.DissipationWatts, "W", steady.InputPowerWatts),
            ]);
        }

        table.Write(output);
    }

    private static void WriteDiodes(TextWriter output, PeriodicSteadyState steady)
    {
        if (steady.Diodes.Count == 0)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine("  Body diodes: current from second to first node of the switch");
        TextTable table = new TextTable(indent: "  ").Words("switch").Figures("average").Figures("peak").Figures("dissipation");
        foreach (DiodeOperation d in steady.Diodes)
        {
            table.Row([
                d.Switch.Name,
                Of(d.AverageCurrentAmperes, "A", steady.Point.LoadCurrentAmperes),
                Of(d.PeakCurrentAmperes, "A", steady.Point.LoadCurrentAmperes),
                Of(d.DissipationWatts, "W", steady.InputPowerWatts),
            ]);
        }

        table.Write(output);
    }

    private static void WriteCapacitors(TextWriter output, PeriodicSteadyState steady)
    {
        if (steady.Capacitors.Count == 0)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine("  Capacitors: peak current into the positive plate, average voltage and ripple peak to peak");
        TextTable table = new TextTable(indent: "  ")
            .Words("name").Figures("RMS").Figures("peak").Figures("dissipation").Figures("average").Figures("ripple");
        foreach (CapacitorOperation c in steady.Capacitors)
        {
            table.Row([
                c.Capacitor.Name,
                Of(c.RmsCurrentAmperes, "A", steady.Point.LoadCurrentAmperes),
                Of(c.PeakCurrentAmperes, "A", steady.Point.LoadCurrentAmperes),
                Of(c.DissipationWatts, "W", steady.InputPowerWatts),
                Of(c.AverageVoltageVolts, "V", steady.Point.InputVoltageVolts),
                Of(c.RippleVolts, "V", steady.Point.InputVoltageVolts),
            ]);
        }

        table.Write(output);
    }

    private static void WriteParasitics(TextWriter output, PeriodicSteadyState steady)
    {
        (string Name, ParasiticOperation Operation)[] parasitics =
        [
            .. steady.Capacitors.SelectMany(c => new[] { ($"{c.Capacitor.Name}, bottom plate", c.BottomPlate), ($"{c.Capacitor.Name}, positive plate", c.TopPlate) })
                .Where(p => p.Item2 is not null).Select(p => (p.Item1, p.Item2!)),
            .. steady.Converter.Parasitics.Zip(steady.Parasitics, (p, o) => (p.Name, o)),
        ];
        if (parasitics.Length == 0)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine("  Parasitic capacitances: swing peak to peak, what charging them costs (part of the dissipation above)");
        TextTable table = new TextTable(indent: "  ")
            .Words("name").Figures("C").Figures("swing").Figures("RMS").Figures("charging");
        foreach ((string name, ParasiticOperation p) in parasitics)
        {
            table.Row([name, Of(p.Farads, "F"), Of(p.SwingVolts, "V", steady.Point.InputVoltageVolts), Of(p.RmsCurrentAmperes, "A"), Of(p.ChargingWatts, "W", steady.InputPowerWatts)]);
        }

        table.Write(output);
    }

    private static string Of(double? value, string unit, double scale = 0) =>
        EngineeringNumber.Of(Math.Abs(value ?? 0) < Rounding * Math.Abs(scale) ? 0 * value : value, unit);
}
