using System.Globalization;

namespace ScNet.Testing;

/// <summary>
/// What a campaign reads when it is over: a file of each process, in the folder that SCNET_LAWS_REPORT names, written anew after
/// every law. A line is a law held ("law", its name, cases, processor seconds of the process meanwhile), a law broken ("broken", its name, the case, the first line of the
/// message) or a row of <see cref="WorstErrors"/> ("error" and its members), with tabs between.
/// </summary>
internal static class LawReport
{
    private static readonly Lock s_lock = new();
    private static readonly List<string> s_lines = [];

    /// <summary>A law that held in so many cases, and what it cost while nothing else ran.</summary>
    public static void Held(string law, long cases, TimeSpan processorTime) => Add(
        "law", law, cases.ToString(CultureInfo.InvariantCulture), processorTime.TotalSeconds.ToString("0.00", CultureInfo.InvariantCulture));

    /// <summary>A law that some case broke.</summary>
    public static void Broken(string law, LawBrokenException broken) =>
        Add("broken", law, broken.Case, broken.InnerException?.Message.ReplaceLineEndings(" ").Replace('\t', ' ') ?? "");

    /// <summary>A row as a line.</summary>
    public static string Line(WorstErrors.Row row) => string.Join(
        '\t', "error", row.Quantity, row.Law, row.Cases.ToString(CultureInfo.InvariantCulture), row.Figures.ToString(CultureInfo.InvariantCulture), Number(row.Worst), Number(row.Tolerance), row.Case);

    private static void Add(params string[] parts)
    {
        if (Environment.GetEnvironmentVariable("SCNET_LAWS_REPORT") is not { Length: > 0 } folder)
        {
            return;
        }

        lock (s_lock)
        {
            s_lines.Add(string.Join('\t', parts));
            File.WriteAllLines(
                Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{Environment.ProcessId}.tsv")), [.. s_lines, .. WorstErrors.OfRun.Rows().Where(r => r.Law.Length > 0).Select(Line)]);
        }
    }

    private static string Number(double value) => value.ToString("0.0e-0", CultureInfo.InvariantCulture);
}
