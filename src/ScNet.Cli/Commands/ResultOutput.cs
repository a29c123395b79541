using System.CommandLine;
using System.CommandLine.Parsing;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary>How a command writes its result: pages for people, JSON or CSV for programs, rows in the order that was asked for.</summary>
internal sealed class ResultOutput
{
    private const string Text = "text", Json = "json", Csv = "csv";

    private readonly Option<string> _format;
    private readonly SortOption? _sort;

    private ResultOutput(Option<string> format, SortOption? sort)
    {
        _format = format;
        _sort = sort;
    }

    /// <summary>Gives a command the option --format; the first form is the usual one.</summary>
    /// <param name="command">The command.</param>
    /// <param name="formats">The forms; text, JSON and CSV where left out.</param>
    public static ResultOutput AddTo(Command command, params string[] formats)
    {
        ResultOutput output = new(SharedOptions.Format(formats is [] ? [Text, Json, Csv] : formats), null);
        command.Options.Add(output._format);
        return output;
    }

    /// <summary>Gives a command --sort and --descending too.</summary>
    /// <param name="command">The command.</param>
    /// <param name="headings">The columns of its text.</param>
    /// <param name="keys">The columns of its CSV output.</param>
    /// <param name="formats">The forms; text, JSON and CSV where left out.</param>
    public static ResultOutput Sorting(Command command, IReadOnlyList<PageColumn> headings, IReadOnlyList<string> keys, params string[] formats)
    {
        SortOption sort = SortOption.AddTo(command, headings, keys);
        ResultOutput output = new(AddTo(command, formats)._format, sort);
        return output;
    }

    /// <summary>The column of the CSV output by which rows are sorted; null where none was asked for.</summary>
    public string? SortKey(CommandResult result) => _sort?.Key(result);

    /// <summary>The form that was asked for.</summary>
    public string Form(ParseResult parsed) => parsed.GetRequiredValue(_format);

    /// <summary>Writes a result whose pages have an order of their own, or that of the column that was asked for in each of their tables.</summary>
    /// <returns>Whether the form is text, JSON or CSV; another is the command's to write.</returns>
    public bool Write(ParseResult parsed, Func<ResultTable> table, IEnumerable<Page> pages) =>
        Write(parsed, table, _ => _sort is null ? pages : pages.Select(p => _sort.Sorted(parsed, p)));

    /// <summary>Writes rows: the table, or the page of the rows in the order asked for; none where no row has anything to show.</summary>
    public bool Write<T>(ParseResult parsed, Func<ResultTable> table, IReadOnlyList<ResultRow<T>> rows, Func<IEnumerable<ResultRow<T>>, Page> page)
        where T : class =>
        Write(parsed, table, order => rows.Any(r => r.Outcome is not null) ? [page(order is null ? rows : order.Select(i => rows[i]))] : []);

    /// <summary>Writes a result in the order asked for.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="table">Makes the table of all rows, where it is needed.</param>
    /// <param name="pages">Makes the pages of the positions of the rows in their order; of null where none was asked for.</param>
    /// <returns>Whether the form is text, JSON or CSV; another is the command's to write.</returns>
    public bool Write(ParseResult parsed, Func<ResultTable> table, Func<IReadOnlyList<int>?, IEnumerable<Page>> pages)
    {
        ToolSession session = ToolSession.Of(parsed);
        switch (Form(parsed))
        {
            case Json:
                session.Output.WriteLine(Sorted().ToJson());
                return true;
            case Csv:
                session.Output.Write(Sorted().ToCsv());
                return true;
            case Text:
                foreach (Page page in pages(_sort?.Key(parsed.CommandResult) is null ? null : _sort.Order(parsed, table())))
                {
                    session.Write(page);
                }

                return true;
            default:
                return false;
        }

        ResultTable Sorted() => _sort is null ? table() : _sort.Sorted(parsed, table());
    }
}
