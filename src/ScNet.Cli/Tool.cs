using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using ScNet.Cli.Commands;

namespace ScNet.Cli;

/// <summary>The whole command line: parses the arguments, runs the command and maps outcomes to exit codes.</summary>
internal static class Tool
{
    /// <summary>Everything was done and every mode has a result.</summary>
    public const int Success = 0;

    /// <summary>A file could not be read, or a mode has no result.</summary>
    public const int Failure = 1;

    /// <summary>The command line itself is wrong; nothing was done.</summary>
    public const int WrongUsage = 2;

    /// <summary>Runs one command line.</summary>
    /// <param name="arguments">The arguments without the program's name.</param>
    /// <param name="output">Standard output; flushed at the end.</param>
    /// <param name="error">Standard error.</param>
    /// <param name="showsProgress">Whether a long search writes how far it is on standard error: only where that is a terminal.</param>
    /// <param name="cancellationToken">Stops long work; what is done until then is written.</param>
    /// <returns>The exit code.</returns>
    public static int Run(
        IReadOnlyList<string> arguments, TextWriter output, TextWriter error, bool showsProgress = false, CancellationToken cancellationToken = default)
    {
        output.NewLine = "\n";
        error.NewLine = "\n";
        try
        {
            int code = Invoke(CreateRoot(showsProgress, cancellationToken).Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null }), output, error);
            output.Flush();
            return code;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            error.WriteLine($"scnet: the output cannot be written: {exception.Message}");
            return Failure;
        }
    }

    // A RootCommand would take its name from the executable, which is not that of the installed tool.
    private static Command CreateRoot(bool showsProgress, CancellationToken cancellationToken) => new("scnet", "Designs, analyses and compares switched-capacitor converters from netlist documents.")
    {
        new HelpOption(),
        new VersionOption(),
        DesignCommand.Create(showsProgress, cancellationToken),
        AnalyzeCommand.Create(),
        CompareCommand.Create(),
        SweepCommand.Create(),
        OperateCommand.Create(),
        ReachCommand.Create(showsProgress),
        MapCommand.Create(),
        FamilyCommand.Create(),
        SchemaCommand.Create(),
    };

    private static int Invoke(ParseResult parsed, TextWriter output, TextWriter error)
    {
        if (parsed.Action is ParseErrorAction)
        {
            foreach (string message in parsed.Errors.Select(e => e.Message).Distinct())
            {
                error.WriteLine($"scnet: {message}");
            }

            string command = parsed.CommandResult.Parent is null ? string.Empty : parsed.CommandResult.Command.Name + " ";
            error.WriteLine($"For the options, run: scnet {command}--help");
            return WrongUsage;
        }

        return parsed.Invoke(new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false });
    }
}
