using System.Globalization;
using ScNet.Analysis;
using ScNet.Results;
using ScNet.SteadyState;
using ScNet.Results.Pages;

namespace ScNet.Cli.Rendering;

/// <summary>The output impedance of a mode at some frequencies for people: exact, limits, and estimates with their errors.</summary>
internal static class ImpedanceText
{
    private static readonly string[] s_legend =
    [
        "  root-sum-square is √(SSL² + FSL²), 2.54-norm (SSL^2.54 + FSL^2.54)^(1/2.54), single pair SSL·coth(SSL/FSL);",
        "  the error of each is against the exact value",
    ];

    /// <summary>Writes the impedance, or why it is refused; whether there is nothing to refuse.</summary>
    public static bool Write(TextWriter output, ModeOutcome outcome, double[] frequenciesHz)
    {
        if (frequenciesHz.Length == 0)
        {
            return true;
        }

        SteadyStateModel? model = null;
        ResultRow<ImpedancePoint[]> row = ResultRow.Find(null, outcome, a => Array.ConvertAll(frequenciesHz, (model = SteadyStateModel.Of(a)).At));
        output.WriteLine();
        if (row.Result is not { } points)
        {
            output.WriteLine("  Output impedance      no result");
            foreach (Diagnostic diagnostic in row.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error))
            {
                output.WriteLine(Printable.Of($"  {diagnostic}"));
            }

            return false;
        }

        // the published estimates are those of capacitors charged by impulses
        Converter converter = outcome.Converter;
        if (converter.Inductors.Count == 0)
        {
            OutputImpedance impedance = model!.Impedance;
            WriteEstimates(output, points);
            output.WriteLine(impedance.CornerFrequencyHz > 0 && double.IsFinite(impedance.CornerFrequencyHz)
                ? $"  Corner frequency      {EngineeringNumber.Of(impedance.CornerFrequencyHz, "Hz")}, where both limits are equal"
                : "  Corner frequency      none: one of the limits is zero");
        }

        if (converter.Inductors.Count > 0)
        {
            WriteTwoPort(output, converter, points);
        }
        else if (converter.Parasitics.Count > 0 || converter.Capacitors.Any(c => c.Plates.BottomFarads > 0 || c.Plates.TopFarads > 0))
        {
            output.WriteLine();
            WriteTwoPort(output, converter, points);
        }

        if (converter.FurtherOutputs.Count > 0)
        {
            OutputsText.Write(output, model!.MultiPort, frequenciesHz);
        }

        return true;
    }

    private static void WriteEstimates(TextWriter output, ImpedancePoint[] points)
    {
        output.WriteLine("  Output impedance: exact, both limits, and estimates from the limits");
        TextTable table = new TextTable(indent: "  ")
            .Figures("frequency").Figures("exact").Figures("SSL").Figures("FSL")
            .Figures("root-sum-square").Figures("error").Figures("2.54-norm").Figures("error").Figures("single pair").Figures("error");
        foreach (ImpedancePoint point in points)
        {
            table.Row([
                EngineeringNumber.Of(point.FrequencyHz, "Hz"),
                EngineeringNumber.Of(point.Ohms, "Ω"),
                EngineeringNumber.Of(point.SlowOhms, "Ω"),
                EngineeringNumber.Of(point.FastOhms, "Ω"),
                EngineeringNumber.Of(point.RootSumSquareOhms, "Ω"),
                Error(point.RootSumSquareError),
                EngineeringNumber.Of(point.Norm254Ohms, "Ω"),
                Error(point.Norm254Error),
                EngineeringNumber.Of(point.SinglePairOhms, "Ω"),
                Error(point.SinglePairError),
            ]);
        }

        table.Write(output);
        foreach (string line in s_legend)
        {
            output.WriteLine(line);
        }
    }

    private static void WriteTwoPort(TextWriter output, Converter converter, ImpedancePoint[] points)
    {
        bool hasInductors = converter.Inductors.Count > 0;
        output.WriteLine("  Exact averages: output = ratio · input - impedance · load current, input current = current ratio · load current + conductance · input");
        TextTable table = new TextTable(indent: "  ")
            .Figures("frequency").Figures("ratio").Figures("impedance").Figures("current ratio").Figures("conductance");
        if (hasInductors)
        {
            table.Figures("left per period").Figures("time constant").Figures([.. converter.Capacitors.Select(c => c.Name)]);
        }

        foreach (TwoPortPoint point in points.Select(p => p.TwoPort))
        {
            table.Row([
                EngineeringNumber.Of(point.FrequencyHz, "Hz"),
                Plain(point.Ratio),
                EngineeringNumber.Of(point.Ohms, "Ω"),
                Plain(point.CurrentRatio),
                EngineeringNumber.Of(point.InputSiemens, "S"),
                .. hasInductors ? Balance(point) : [],
            ]);
        }

        table.Write(output);
        if (hasInductors)
        {
            output.WriteLine("  under the capacitors: their average voltage per volt of input without load; left per period is what a period leaves of");
            output.WriteLine("  the disturbance that lasts longest, the time constant when a disturbance has fallen to 1/e");
        }
    }

    private static string[] Balance(TwoPortPoint point) =>
    [
        Plain(point.DecayPerPeriod),
        EngineeringNumber.Of(point.TimeConstantSeconds, "s"),
        .. point.CapacitorVoltages.Select(v => v is { } volts ? Plain(volts) : "?"),
    ];

    // five digits of a quotient without a unit
    private static string Plain(double value) => value.ToString("G5", CultureInfo.InvariantCulture);

    private static string Error(double error) => double.IsFinite(error)
        ? error.ToString("+0.00 %;-0.00 %;0.00 %", CultureInfo.InvariantCulture)
        : "-";
}
