using System.CommandLine;
using ScNet.Analysis;
using ScNet.Cli.Rendering;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet sweep</c>: the output impedance over frequency for a plot.</summary>
internal static class SweepCommand
{
    public static Command Create()
    {
        Argument<string[]> files = SharedOptions.Files();
        Option<double[]> frequencies = SharedOptions.Frequencies(string.Empty, required: true);
        Option<string> mode = SharedOptions.Mode();
        Command command = new("sweep", "Exact output impedance over frequency beside both limits and the published estimates, as CSV.")
        {
            files, frequencies, mode,
        };
        command.SetAction(parsed =>
        {
            TextWriter output = parsed.InvocationConfiguration.Output, error = parsed.InvocationConfiguration.Error;
            int code = Tool.Success;
            SweepCsv.WriteHeader(output);
            foreach (string path in parsed.GetRequiredValue(files))
            {
                FileAnalysis analysis = FileAnalysis.Of(NetlistFile.Read(path, error), parsed.GetValue(mode), error);
                analysis.ReportFailures(error);
                foreach (ModeAnalysis sound in analysis.Results)
                {
                    SweepCsv.Write(output, path, sound, parsed.GetRequiredValue(frequencies));
                }

                code = Math.Max(code, analysis.IsComplete ? Tool.Success : Tool.Failure);
            }

            return code;
        });
        return command;
    }
}
