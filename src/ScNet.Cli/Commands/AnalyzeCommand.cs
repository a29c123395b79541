using System.CommandLine;
using ScNet.Cli.Rendering;
using ScNet.Results;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet analyze</c>: everything about every mode of each file.</summary>
internal static class AnalyzeCommand
{
    public static Command Create()
    {
        Argument<string[]> files = SharedOptions.Files();
        Option<string> mode = SharedOptions.Mode();
        Option<double[]> frequencies = SharedOptions.Frequencies(": gives the exact output impedance at each", required: false);
        Option<string> format = SharedOptions.Format("text", "json");
        Command command = new("analyze", "Ratio, both limits of the output impedance, charges and voltages of every mode.")
        {
            files, mode, frequencies, format,
        };
        command.SetAction(parsed =>
        {
            TextWriter error = parsed.InvocationConfiguration.Error;
            IEnumerable<FileAnalysis> analyses = parsed.GetRequiredValue(files)
                .Select(path => FileAnalysis.Of(NetlistFile.Read(path, error), parsed.GetValue(mode), error));
            return parsed.GetValue(format) == "json"
                ? WriteJson([.. analyses], parsed.GetValue(frequencies), parsed.InvocationConfiguration.Output)
                : WriteText(analyses, parsed.GetValue(frequencies) ?? [], parsed.InvocationConfiguration.Output);
        });
        return command;
    }

    private static int WriteText(IEnumerable<FileAnalysis> analyses, double[] frequenciesHz, TextWriter output)
    {
        int code = Tool.Success;
        bool first = true;
        foreach (FileAnalysis analysis in analyses)
        {
            if (analysis.Converter is { } converter && analysis.Modes.Count > 0)
            {
                if (!first)
                {
                    output.WriteLine();
                }

                first = false;
                code = AnalysisText.Write(output, analysis.File.Path, converter, analysis.Modes, frequenciesHz) ? code : Tool.Failure;
            }

            code = Math.Max(code, analysis.IsComplete ? Tool.Success : Tool.Failure);
        }

        return code;
    }

    private static int WriteJson(FileAnalysis[] analyses, double[]? frequenciesHz, TextWriter output)
    {
        AnalysisDocument[] documents = [.. analyses.Select(a => ToDocument(a, frequenciesHz))];
        output.WriteLine(documents.Length == 1 ? documents[0].ToJson() : AnalysisDocument.ToJson(documents));
        return analyses.All(a => a.IsComplete) && documents.All(d => d.IsComplete) ? Tool.Success : Tool.Failure;
    }

    private static AnalysisDocument ToDocument(FileAnalysis analysis, double[]? frequenciesHz)
    {
        AnalysisDocument document = analysis.Converter is { } converter
            ? AnalysisDocument.Of(converter, analysis.Modes)
            : AnalysisDocument.Unreadable(analysis.File.Path, analysis.File.Reading.Diagnostics);
        return frequenciesHz is null or [] ? document : document.WithOutputImpedance(frequenciesHz);
    }
}
