using System.CommandLine;
using ScNet.Derivations;
using ScNet.Derivations.Documents;
using ScNet.Derivations.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet check</c>: what somebody derived by hand against the analysis.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        Argument<string[]> files = SharedOptions.Documents("DERIVATION", "Derivation documents (TOML), each with the netlist that it is about");
        Option<string?> netlist = new("--netlist") { Description = "The netlist that they are about, in the place of those that they name.", HelpName = "FILE" };
        Command command = new("check", "What is right and wrong in a hand derivation, which law a wrong value breaks, and which slip it looks like.")
        {
            files, netlist,
        };
        ResultOutput writer = ResultOutput.AddTo(command);
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            Converter? converter = null;
            if (parsed.GetValue(netlist) is { } path)
            {
                converter = NetlistFile.Read(path, session)?.Reading.Converter;
                if (converter is null)
                {
                    return Tool.Failure;
                }
            }

            List<(string File, DerivationReport? Report, IReadOnlyList<Diagnostic> Diagnostics)> checks = [];
            bool isRead = true;
            foreach (string file in parsed.GetRequiredValue(files))
            {
                DerivationReading? reading = session.Read(
                    file, (stream, name) => DerivationReader.Read(stream, converter, name), path => DerivationReader.ReadFile(path, converter));
                isRead &= reading is not null;
                if (reading is not null)
                {
                    RequirementFile.Report(reading.HasResult ? [] : reading.Diagnostics, file, session.Error);
                    checks.Add((file == ToolSession.InputName ? ToolSession.InputTitle : file, reading.Derivation?.Check(), reading.Diagnostics));
                }
            }

            writer.Write(parsed, () => DerivationTables.OfChecks(checks), checks.Where(c => c.Report is not null).Select(c => DerivationPage.Of(c.File, c.Report!)));

            return isRead && checks.All(c => c.Report is { IsRight: true }) ? Tool.Success : Tool.Failure;
        });
        return command;
    }
}
