using System.CommandLine;
using System.CommandLine.Parsing;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary>The order of the rows of a command: by a heading of its text or a column of its CSV output, in either direction.</summary>
internal sealed class SortOption
{
    private readonly Option<string?> _column;
    private readonly Option<bool> _descending = new("--descending") { Description = "With --sort: the largest first." };
    private readonly IReadOnlyList<PageColumn> _headings;

    private SortOption(IReadOnlyList<PageColumn> headings, IReadOnlyList<string> keys)
    {
        _headings = [.. headings.Where(h => h.Key is { } key && keys.Contains(key)).DistinctBy(h => h.Heading)];
        _column = new("--sort")
        {
            Description = $"Sorts the rows by a heading: {string.Join(", ", _headings.Select(h => h.Heading))}; or by a column of the CSV output. The smallest first, rows without a value last.",
            HelpName = "HEADING",
        };
        _column.CompletionSources.Add([.. _headings.Select(h => h.Heading)]);
        _column.Validators.Add(result =>
        {
            foreach (Token token in result.Tokens.Where(t => !keys.Contains(KeyOf(t.Value))))
            {
                result.AddError($"Expected a heading or a column of the CSV output after --sort, one of {string.Join(", ", _headings.Select(h => h.Heading).Union(keys))}, but got '{token.Value}'.");
            }
        });
    }

    /// <summary>Gives a command the options --sort and --descending.</summary>
    /// <param name="command">The command.</param>
    /// <param name="headings">The columns of its text.</param>
    /// <param name="keys">The columns of its CSV output.</param>
    public static SortOption AddTo(Command command, IReadOnlyList<PageColumn> headings, IReadOnlyList<string> keys)
    {
        SortOption option = new(headings, keys);
        command.Options.Add(option._column);
        command.Options.Add(option._descending);
        command.Validators.Add(result =>
        {
            if (result.GetValue(option._descending) && result.GetValue(option._column) is null)
            {
                result.AddError("--descending says in which direction --sort goes. Add --sort HEADING.");
            }
        });
        return option;
    }

    /// <summary>The column of the CSV output that was asked for; null where none was.</summary>
    public string? Key(CommandResult result) => result.GetValue(_column) is { } text ? KeyOf(text) : null;

    /// <summary>The positions of the rows of a table in the order asked for; null where none was.</summary>
    public IReadOnlyList<int>? Order(ParseResult parsed, ResultTable table) =>
        Key(parsed.CommandResult) is { } key ? table.Order(key, parsed.GetValue(_descending)) : null;

    /// <summary>The table in the order asked for.</summary>
    public ResultTable Sorted(ParseResult parsed, ResultTable table) =>
        Key(parsed.CommandResult) is { } key ? table.Sorted(key, parsed.GetValue(_descending)) : table;

    /// <summary>The page with its tables in the order asked for.</summary>
    public Page Sorted(ParseResult parsed, Page page) =>
        Key(parsed.CommandResult) is { } key ? page.Sorted(key, parsed.GetValue(_descending)) : page;

    private string KeyOf(string text) => _headings.FirstOrDefault(h => h.Heading == text)?.Key ?? text;
}
