using System.CommandLine;
using System.CommandLine.Parsing;
using ScNet.Topologies;

namespace ScNet.Cli.Commands;

/// <summary>The netlists of a command: files, standard input and standard families.</summary>
internal sealed class NetlistSources
{
    private readonly Argument<string[]> _files;
    private readonly Option<string[]> _families;

    private NetlistSources(Argument<string[]> files, Option<string[]> families)
    {
        _files = files;
        _families = families;
    }

    /// <summary>Gives a command the argument FILE and the option --family, of which it needs one, or one of them only, or which it can do without.</summary>
    public static NetlistSources AddTo(Command command, bool isSingle = false, bool mayBeNone = false)
    {
        NetlistSources sources = new(SharedOptions.Files(isSingle), Families(isSingle));
        command.Arguments.Add(sources._files);
        command.Options.Add(sources._families);
        command.Validators.Add(result =>
        {
            string[] files = result.GetValue(sources._files) ?? [];
            int count = sources.Count(result);
            if ((count == 0 && !mayBeNone) || (isSingle && count > 1))
            {
                result.AddError($"Expected {(isSingle ? "one" : "at least one")} FILE or --family.");
            }

            if (files.Count(f => f == ToolSession.InputName) > 1)
            {
                result.AddError("Standard input can be read once only: give - in one place.");
            }
        });
        return sources;
    }

    /// <summary>How many there are.</summary>
    public int Count(CommandResult result) => (result.GetValue(_files) ?? []).Length + (result.GetValue(_families) ?? []).Length;

    /// <summary>Reads them one after the other: files, then families, in the order given. Their errors go to standard error.</summary>
    public IEnumerable<NetlistFile> Read(ParseResult parsed)
    {
        ToolSession session = ToolSession.Of(parsed);
        return (parsed.GetValue(_files) ?? []).Select(path => NetlistFile.Read(path, session)).OfType<NetlistFile>()
            .Concat((parsed.GetValue(_families) ?? []).Select(Family));
    }

    // the validator has seen that it can be read
    private static NetlistFile Family(string text)
    {
        FamilyRequest.Read(text, out FamilyRequest? request);
        return NetlistFile.Of(request!);
    }

    private static Option<string[]> Families(bool isSingle)
    {
        Option<string[]> families = new("--family")
        {
            Description = $"A standard family instead of {(isSingle ? "a file" : "files, or beside them")}, in quotation marks, such as \"ladder 4\" or \"dickson 3 --step-up\""
                + $"{(isSingle ? string.Empty : "; may be given several times")}. The list: scnet family",
            HelpName = "\"NAME SIZE\"",
        };
        families.Validators.Add(result =>
        {
            foreach (string message in result.Tokens.Select(t => FamilyRequest.Read(t.Value, out _)).OfType<string>())
            {
                result.AddError($"{message} Put quotation marks round name and sizes: --family \"ladder 4\".");
            }
        });
        return families;
    }
}
