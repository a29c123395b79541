using System.CommandLine;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet analyze</c>: everything about every mode of each file.</summary>
internal static class AnalyzeCommand
{
    public static Command Create()
    {
        Command command = new("analyze", "Ratio, both limits of the output impedance, charges and voltages of every mode.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<string> mode = SharedOptions.Mode();
        Option<double[]> frequencies = SharedOptions.Frequencies(": gives the exact output impedance at each", required: false);
        Option<string> format = SharedOptions.Format("text", "json");
        command.Options.Add(mode);
        command.Options.Add(frequencies);
        command.Options.Add(format);
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            IEnumerable<FileAnalysis> analyses = netlists.Read(parsed).Select(file => FileAnalysis.Of(file, parsed.GetValue(mode), session.Error));
            return parsed.GetValue(format) == "json"
                ? WriteJson([.. analyses], parsed.GetValue(frequencies), session.Output)
                : WriteText(analyses, parsed.GetValue(frequencies) ?? [], session);
        });
        return command;
    }

    private static int WriteText(IEnumerable<FileAnalysis> analyses, double[] frequenciesHz, ToolSession session)
    {
        int code = Tool.Success;
        foreach (FileAnalysis analysis in analyses)
        {
            bool isComplete = analysis.IsComplete;
            if (analysis.Converter is { } converter && analysis.Modes.Count > 0)
            {
                Page page = AnalysisPage.Of(converter, analysis.Modes, frequenciesHz, analysis.File.Path);
                session.Write(page);
                isComplete &= page.IsComplete;
            }

            code = Math.Max(code, isComplete ? Tool.Success : Tool.Failure);
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
