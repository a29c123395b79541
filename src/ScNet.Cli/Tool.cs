using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using ScNet.Cli.Commands;
using ScNet.Results.Pages;

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
    /// <param name="session">What is read from and written to; the output is flushed at the end.</param>
    /// <returns>The exit code.</returns>
    public static int Run(IReadOnlyList<string> arguments, ToolSession session)
    {
        session.Output.NewLine = "\n";
        session.Error.NewLine = "\n";
        try
        {
            int code = Invoke(CreateRoot().Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null }), session);
            session.Output.Flush();
            return code;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            Tell(session.Error, $"scnet: the output cannot be written: {Printable.Of(exception.Message)}");
            return Failure;
        }
    }

    // where standard error is what cannot be written, the exit code alone says so
    private static void Tell(TextWriter error, string message)
    {
        try
        {
            error.WriteLine(message);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
        }
    }

    // A RootCommand would take its name from the executable, which is not that of the installed tool.
    private static Command CreateRoot()
    {
        Command root = Commands();
        root.Subcommands.Add(CompleteCommand.Create(root));
        return root;
    }

    private static Command Commands() => new("scnet", "Designs, analyses and compares switched-capacitor converters from netlist documents.")
    {
        new HelpOption { Action = new HelpAction { MaxWidth = Page.UsualWidth } },
        new VersionOption(),
        DesignCommand.Create(),
        AnalyzeCommand.Create(),
        CompareCommand.Create(),
        SweepCommand.Create(),
        OperateCommand.Create(),
        StressCommand.Create(),
        GatesCommand.Create(),
        TolerancesCommand.Create(),
        ReachCommand.Create(),
        OverlayCommand.Create(),
        FindCommand.Create(),
        FormulasCommand.Create(),
        WorkingCommand.Create(),
        CheckCommand.Create(),
        DifferenceCommand.Create(),
        MapCommand.Create(),
        ReportCommand.Create(),
        AtlasCommand.Create(),
        FamilyCommand.Create(),
        SchemaCommand.Create(),
        CompletionCommand.Create(),
    };

    private static int Invoke(ParseResult parsed, ToolSession session)
    {
        if (parsed.Action is ParseErrorAction)
        {
            foreach (string message in parsed.Errors.Select(e => e.Message).Distinct())
            {
                session.Error.WriteLine($"scnet: {Printable.Of(message)}");
            }

            string command = parsed.CommandResult.Parent is null ? string.Empty : parsed.CommandResult.Command.Name + " ";
            session.Error.WriteLine($"For the options, run: scnet {command}--help");
            return WrongUsage;
        }

        return parsed.Invoke(session);
    }
}
