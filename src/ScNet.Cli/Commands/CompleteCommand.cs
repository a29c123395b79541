using System.CommandLine;
using System.CommandLine.Completions;
using ScNet.Netlists;
using ScNet.Topologies;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet complete</c>, which the scripts of <see cref="CompletionCommand"/> call: what the last word may become, one to a line.</summary>
internal static class CompleteCommand
{
    /// <param name="root">The whole command line.</param>
    public static Command Create(Command root)
    {
        Argument<string[]> words = new("WORDS") { Arity = ArgumentArity.ZeroOrMore };
        Command command = new("complete", "What the last word of a command line may become.") { words };
        command.Hidden = true;
        command.SetAction(parsed =>
        {
            foreach (string found in Of(root, parsed.GetValue(words) ?? []))
            {
                parsed.InvocationConfiguration.Output.WriteLine(found);
            }

            return Tool.Success;
        });
        return command;
    }

    /// <summary>What the last word may become; nothing where it is the name of a file.</summary>
    public static IEnumerable<string> Of(Command root, IReadOnlyList<string> words)
    {
        // a word that the shell left whole becomes a whole word again
        string whole = words is [.., { } end] && end.StartsWith("--", StringComparison.Ordinal) ? end[..(end.IndexOf('=', StringComparison.Ordinal) + 1)] : string.Empty;
        words = Apart(words);
        string last = words.Count > 0 ? words[^1] : string.Empty;
        string[] before = [.. words.SkipLast(1)];
        Command command = root;
        foreach (string word in before)
        {
            command = command.Subcommands.FirstOrDefault(c => c.Name == word && !c.Hidden) ?? command;
        }

        Option? option = before.Length > 0 ? OptionsOf(command).FirstOrDefault(o => Names(o).Contains(before[^1]) && o.Arity.MaximumNumberOfValues > 0 && o.ValueType != typeof(bool)) : null;
        IEnumerable<string> found = option is not null ? Values(option, before)
            : last.StartsWith('-') ? OptionsOf(command).SelectMany(Names).Where(n => n.StartsWith("--", StringComparison.Ordinal) || n.Length == 2)
            : command.Subcommands.Where(c => !c.Hidden).Select(c => c.Name)
                .Concat(command.Arguments.SelectMany(a => a.CompletionSources).SelectMany(source => source(CompletionContext.Empty)).Select(c => c.Label));
        return found.Where(f => f.StartsWith(last, StringComparison.Ordinal)).Distinct().Order(StringComparer.Ordinal).Select(f => whole + f);
    }

    // "--format=json" is an option and its value, whether the shell takes it apart or not
    private static List<string> Apart(IReadOnlyList<string> words)
    {
        List<string> apart = [];
        for (int i = 0; i < words.Count; i++)
        {
            string word = words[i];
            int sign = word.StartsWith("--", StringComparison.Ordinal) ? word.IndexOf('=', StringComparison.Ordinal) : -1;
            if (word == "=" && i > 0)
            {
                if (i == words.Count - 1)
                {
                    apart.Add(string.Empty);
                }
            }
            else if (sign > 0)
            {
                apart.Add(word[..sign]);
                apart.Add(word[(sign + 1)..]);
            }
            else
            {
                apart.Add(word);
            }
        }

        return apart;
    }

    private static IEnumerable<Option> OptionsOf(Command command) => command.Options.Where(o => !o.Hidden);

    private static IEnumerable<string> Names(Option option) => [option.Name, .. option.Aliases];

    private static IEnumerable<string> Values(Option option, string[] before) => option.Name switch
    {
        "--mode" => Netlists(before).SelectMany(c => c.Modes).Select(m => m.Name),
        "--family" => FamilyCatalogue.All.Select(f => f.Name),
        _ => option.CompletionSources.SelectMany(source => source(CompletionContext.Empty)).Select(c => c.Label),
    };

    // the converters that the words before name
    private static IEnumerable<Converter> Netlists(string[] words) => words
        .Where(w => w.EndsWith(".toml", StringComparison.OrdinalIgnoreCase))
        .Select(path => NetlistReader.ReadFile(path).Converter)
        .OfType<Converter>();
}
