using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Reporting.Html;
using ScNet.SteadyState;
using ScNet.Stress;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet report</c>: one file of HTML about a converter, a comparison or a design.</summary>
internal static class ReportCommand
{
    public static Command Create()
    {
        Command command = new("report", "One HTML file that opens offline: of one netlist all that is known of it, of several a comparison, of a requirement alone the design.");
        NetlistSources netlists = NetlistSources.AddTo(command, mayBeNone: true);
        Options options = new();
        foreach (Option option in options.All)
        {
            command.Options.Add(option);
        }

        command.Validators.Add(result => options.Check(result, netlists.Count(result)));
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            string? path = parsed.GetValue(options.Requirement);
            Requirement? requirement = path is null ? null : RequirementFile.Read(path, session);
            if (path is not null && requirement is null)
            {
                return Tool.Failure;
            }

            string output = parsed.GetRequiredValue(options.Output);
            if (output != ToolSession.InputName)
            {
                AtomicFile.Try(output);
            }

            NetlistFile[] files = [.. netlists.Read(parsed)];
            (Report? report, bool isComplete) = files.Length switch
            {
                0 => OfDesign(requirement!, path!, parsed, options, session),
                1 => OfConverter(files[0], requirement, parsed, options, session.Error),
                _ => OfComparison(files, parsed, options, session.Error),
            };
            if (report is null)
            {
                return Tool.Failure;
            }

            Write(report, output, session.Output);
            return isComplete ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    private static (Report?, bool) OfDesign(Requirement requirement, string path, ParseResult parsed, Options options, ToolSession session)
    {
        using Interruption interruption = new(session.CancellationToken);
        Candidates candidates = Candidates.Of(requirement, Path.GetDirectoryName(path) is { Length: > 0 } folder ? folder : ".");
        RequirementFile.Report(candidates.Diagnostics, path, session.Error);
        RankedChoice choice = session.Follow("worked out", p => RankedChoice.Of(requirement, candidates.All, p, cancellationToken: interruption.Token));
        ChoiceSensitivity? sensitivity = parsed.GetValue(options.Sensitivity)
            ? session.Follow("worked out", p => ChoiceSensitivity.Of(choice, p, cancellationToken: interruption.Token))
            : null;
        return (Report.OfDesign(choice, sensitivity, parsed.GetValue(options.Date)), choice is { IsComplete: true, Winner: not null } && candidates.Diagnostics.Count == 0);
    }

    private static (Report?, bool) OfConverter(NetlistFile file, Requirement? requirement, ParseResult parsed, Options options, TextWriter error)
    {
        FileAnalysis analysis = FileAnalysis.Of(file, null, error);
        if (analysis.Converter is not { } converter)
        {
            return (null, false);
        }

        analysis.ReportFailures(error);
        double? volts = parsed.GetValue(options.InputVolts) ?? requirement?.InputVolts.Maximum;
        ConverterAnalysis whole = ConverterAnalysis.Of(converter);
        OperatingPoint? point = parsed.GetValue(options.LoadAmperes) is { } amperes ? new OperatingPoint(volts!.Value, amperes, parsed.GetValue(options.FrequencyHz)!.Value) : null;
        return (
            Report.OfConverter(whole, new ReportConditions
            {
                Point = point,
                Sized = requirement is null ? null
                    : point is not null ? FileSizes.Of(file.Path, analysis, point, requirement.Process, error)
                    : FileSizes.Of(file.Path, ConverterStress.Of(whole, new Interval<double>(volts!.Value, volts.Value)), requirement.Process, error),
                Limits = parsed.GetValue(options.RatedVolts) is { } rating ? RatingLimits.OfRating(rating) : null,
                InputVolts = volts is { } highest ? new Interval<double>(highest, highest) : null,
                Origin = file.Path,
                Date = parsed.GetValue(options.Date),
            }),
            analysis.IsComplete);
    }

    private static (Report?, bool) OfComparison(NetlistFile[] files, ParseResult parsed, Options options, TextWriter error)
    {
        ComparisonConditions conditions = new(
            parsed.GetValue(options.InputVolts)!.Value,
            parsed.GetValue(options.RatedVolts)!.Value,
            frequencyHz: parsed.GetValue(options.FrequencyHz) ?? ComparisonConditions.DefaultFrequencyHz);
        double? amperes = parsed.GetValue(options.LoadAmperes);
        FileComparison[] comparisons = [.. files.Select(file => FileComparison.Of(file, conditions, isSilicon: false, amperes, process: null, error))];
        return (
            Report.OfComparison(conditions, comparisons.SelectMany(c => c.Rows), loadAmperes: amperes, date: parsed.GetValue(options.Date)),
            comparisons.All(c => c.IsComplete));
    }

    private static void Write(Report report, string path, TextWriter output)
    {
        if (path == ToolSession.InputName)
        {
            output.Write(report.ToHtml());
        }
        else
        {
            report.Save(path);
        }
    }

    private sealed class Options
    {
        public Option<string> Output { get; } =
            SharedOptions.Named(new Option<string>("--output") { Description = "The file to write; - is standard output.", HelpName = "FILE", Required = true });

        public Option<string?> Requirement { get; } = SharedOptions.Requirement("Alone: the design that it asks for. With a netlist: adds stacks and losses with the devices of its process");

        public Option<double?> InputVolts { get; } = SharedOptions.OptionalNumber("--input-voltage", "V", "volts (V)", "Input voltage, for stress and the operating point");

        public Option<double?> LoadAmperes { get; } = SharedOptions.OptionalSignedNumber("--load-current", "A", "amperes (A)", "Adds the state at this average current out of the output node");

        public Option<double?> FrequencyHz { get; } = SharedOptions.OptionalNumber("--frequency", "HZ", "hertz (Hz)", "Switching frequency");

        public Option<double?> RatedVolts { get; } = SharedOptions.OptionalNumber("--rating", "V", "volts (V)", "Voltage that each switch and capacitor withstands");

        public Option<bool> Sensitivity { get; } = new("--sensitivity") { Description = "Adds to a design what would change the winner. Takes some ten times as long." };

        public Option<DateOnly?> Date { get; } = DateOption();

        public IEnumerable<Option> All => [Output, Requirement, InputVolts, LoadAmperes, FrequencyHz, RatedVolts, Sensitivity, Date];

        /// <summary>What one kind of report needs, and another has no use for.</summary>
        public void Check(CommandResult result, int netlists)
        {
            bool hasRequirement = Has(Requirement), hasInput = Has(InputVolts), hasLoad = Has(LoadAmperes), hasFrequency = Has(FrequencyHz), hasRating = Has(RatedVolts);
            switch (netlists)
            {
                case 0 when !hasRequirement:
                    result.AddError("Expected at least one FILE or --family, or --requirement for the report of a design.");
                    break;
                case 0 when hasInput || hasLoad || hasFrequency || hasRating:
                    result.AddError("The report of a design takes voltages, loads and frequencies from the requirement: leave them out, or name a netlist.");
                    break;
                case 1 when hasLoad != hasFrequency || (hasLoad && !hasInput && !hasRequirement):
                    result.AddError("An operating point needs --input-voltage, --load-current and --frequency.");
                    break;
                case 1 when hasRating && hasRequirement:
                    result.AddError("Expected --rating or --requirement, but got both.");
                    break;
                case > 1 when !hasInput || !hasRating:
                    result.AddError("A comparison needs --input-voltage and --rating.");
                    break;
                case > 1 when hasRequirement:
                    result.AddError("A comparison has no use for --requirement: name one netlist, or leave it out.");
                    break;
            }

            if (netlists > 0 && Has(Sensitivity))
            {
                result.AddError("--sensitivity belongs to the report of a design, of a requirement alone.");
            }

            // whether it is given: what it says may be no value
            bool Has(Option option) => result.GetResult(option) is { Implicit: false };
        }

        private static Option<DateOnly?> DateOption()
        {
            Option<DateOnly?> date = new("--date") { Description = "The day that the report names; none where left out.", HelpName = "YYYY-MM-DD" };
            date.CustomParser = result =>
            {
                string text = result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty;
                if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
                {
                    return day;
                }

                result.AddError($"Expected a day after --date, such as 2031-05-04, but got '{text}'.");
                return null;
            };
            return date;
        }
    }
}
