using System.CommandLine;
using ScNet.Analysis;
using ScNet.Results;
using ScNet.Results.Pages;
using ScNet.SteadyState;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet tolerances</c>: how far the output impedance spreads when values are not what they were drawn as.</summary>
internal static class TolerancesCommand
{
    private const int DefaultSamples = 1000, MostSamples = 1_000_000;

    public static Command Create()
    {
        Command command = new("tolerances", "Worst case and spread of the output impedance within tolerances of the values.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<double[]> frequencies = SharedOptions.Frequencies(string.Empty, required: true);
        Option<double> capacitance = Tolerance("--capacitance", "capacitances");
        Option<double> resistance = Tolerance("--on-resistance", "on-resistances");
        Option<double> esr = Tolerance("--esr", "series resistances of capacitors");
        Option<int> samples = NumberOptions.Whole("--samples", $"How many samples are drawn, 1 to {MostSamples}", 1, MostSamples, DefaultSamples);
        Option<int> seed = NumberOptions.Seed("Starts the random draws: the same number gives the same samples");
        Option<string> mode = SharedOptions.Mode();
        foreach (Option option in new Option[] { frequencies, capacitance, resistance, esr, samples, seed, mode })
        {
            command.Options.Add(option);
        }

        ResultOutput writer = ResultOutput.Sorting(command, TolerancePage.Columns, ResultTable.ToleranceColumns);
        command.Validators.Add(result =>
        {
            if (new[] { capacitance, resistance, esr }.All(o => result.GetResult(o) is not { Implicit: false }))
            {
                result.AddError("Expected a tolerance: --capacitance, --on-resistance or --esr, such as --capacitance 0.2 for ±20 %.");
            }
        });
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            TextWriter error = session.Error;
            ComponentTolerances tolerances = new(parsed.GetValue(capacitance), parsed.GetValue(resistance), parsed.GetValue(esr));
            int count = parsed.GetValue(samples), start = parsed.GetValue(seed);
            double[] hertz = parsed.GetRequiredValue(frequencies);
            List<ResultRow<ToleratedMode>[]> modes = [];
            bool isComplete = true;
            foreach (NetlistFile file in netlists.Read(parsed))
            {
                FileAnalysis analysis = FileAnalysis.Of(file, parsed.GetValue(mode), error);
                analysis.ReportFailures(error);
                isComplete &= analysis.IsKnown;
                modes.AddRange(file.Reading.HasResult
                    ? analysis.Modes.Select(m => Rows(file.Path, m))
                    : [[ResultRow.Unreadable<ToleratedMode>(file.Path, file.Reading.Diagnostics)]]);
            }

            writer.Write(
                parsed,
                () => ResultTable.OfTolerances(tolerances, start, modes.SelectMany(m => m)),
                modes.Where(m => m[0].Outcome is not null).Select(m => TolerancePage.Of(tolerances, m)));

            return isComplete && modes.All(m => m.All(r => r.Result is not null)) ? Tool.Success : Tool.Failure;

            // a mode that is refused once is refused at every frequency, and told once
            ResultRow<ToleratedMode>[] Rows(string path, ModeOutcome outcome)
            {
                ResultRow<ToleratedMode> first = FileAnalysis.Row(path, outcome, error, found => At(found, hertz[0]));
                return [first, .. hertz.Skip(1).Select(f => first.Result is null ? first : ResultRow.Find(path, outcome, found => At(found, f)))];
            }

            ToleratedMode At(ModeAnalysis found, double frequencyHz) => new(
                frequencyHz,
                ImpedanceTolerance.WorstCase(found, frequencyHz, tolerances),
                ImpedanceTolerance.MonteCarlo(found, frequencyHz, tolerances, count, start));
        });
        return command;
    }

    private static Option<double> Tolerance(string name, string what) => NumberOptions.Fraction(
        name, $"Tolerance of all {what}, as a fraction: 0.2 is ±20 % (exact where left out).", "0.2 for ±20 %", 0);
}
