using System.Globalization;
using ScNet.Analysis;
using ScNet.Results;
using ScNet.SteadyState;

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

        ResultRow<OutputImpedance> row = ResultRow.Find(null, outcome, OutputImpedance.Of);
        if (row.Result is not { } impedance)
        {
            output.WriteLine();
            output.WriteLine("  Output impedance      no result");
            foreach (Diagnostic diagnostic in row.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error))
            {
                output.WriteLine(Printable.Of($"  {diagnostic}"));
            }

            return false;
        }

        output.WriteLine();
        output.WriteLine("  Output impedance: exact, both limits, and estimates from the limits");
        TextTable table = new TextTable(indent: "  ")
            .Figures("frequency").Figures("exact").Figures("SSL").Figures("FSL")
            .Figures("root-sum-square").Figures("error").Figures("2.54-norm").Figures("error").Figures("single pair").Figures("error");
        foreach (ImpedancePoint point in frequenciesHz.Select(impedance.At))
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

        output.WriteLine(impedance.CornerFrequencyHz > 0 && double.IsFinite(impedance.CornerFrequencyHz)
            ? $"  Corner frequency      {EngineeringNumber.Of(impedance.CornerFrequencyHz, "Hz")}, where both limits are equal"
            : "  Corner frequency      none: one of the limits is zero");
        return true;
    }

    private static string Error(double error) => double.IsFinite(error)
        ? error.ToString("+0.00 %;-0.00 %;0.00 %", CultureInfo.InvariantCulture)
        : "-";
}
