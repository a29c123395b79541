using System.CommandLine;
using ScNet.Derivations;
using ScNet.Derivations.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet difference</c>: what changed between two analyses.</summary>
internal static class DifferenceCommand
{
    public static Command Create()
    {
        Argument<string> before = SharedOptions.Document("BEFORE", "The earlier: a snapshot, which is what 'analyze --format json' prints, or a netlist");
        Argument<string> after = SharedOptions.Document("AFTER", "The later: a snapshot or a netlist");
        Option<double> tolerance = NumberOptions.Fraction(
            "--tolerance", "Numbers that differ by no more than this share of the larger one are the same. Fractions are compared exactly.", "1e-6", AnalysisDifference.DefaultTolerance);
        Command command = new("difference", "What changed between two analyses, of netlists or of snapshots; exits with 1 where something did.")
        {
            before, after, tolerance,
        };
        ResultOutput writer = ResultOutput.AddTo(command);
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            string first = parsed.GetRequiredValue(before), second = parsed.GetRequiredValue(after);
            AnalysisSnapshot? earlier = SnapshotFile.Read(first, session), later = SnapshotFile.Read(second, session);
            if (earlier is null || later is null)
            {
                return Tool.WrongUsage;
            }

            AnalysisDifference difference = AnalysisDifference.Between(earlier, later, parsed.GetValue(tolerance));
            writer.Write(parsed, () => DerivationTables.OfDifference(first, second, difference), [DifferencePage.Of(first, second, difference)]);

            return difference.IsEmpty ? Tool.Success : Tool.Failure;
        });
        return command;
    }
}
