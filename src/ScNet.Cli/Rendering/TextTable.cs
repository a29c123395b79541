using Spectre.Console;
using ScNet.Results.Pages;

namespace ScNet.Cli.Rendering;

/// <summary>
/// An aligned table of plain text. Columns are as wide as their longest cell, so nothing is wrapped or
/// cut, whatever the width of the terminal; two spaces stand between columns.
/// </summary>
/// <param name="indent">What stands before each line.</param>
internal sealed class TextTable(string indent)
{
    private const int Unlimited = int.MaxValue / 2;

    private readonly Table _table = new Table().Border(TableBorder.None);

    /// <summary>Adds a column of words.</summary>
    public TextTable Words(string header) => Add(new TableColumn(Cell(header)).LeftAligned());

    /// <summary>Adds a column of figures.</summary>
    public TextTable Figures(string header) => Add(new TableColumn(Cell(header)).RightAligned());

    /// <summary>Adds one column of figures per header.</summary>
    public TextTable Figures(IEnumerable<string> headers)
    {
        foreach (string header in headers)
        {
            Figures(header);
        }

        return this;
    }

    public void Row(IEnumerable<string> cells) => _table.AddRow(cells.Select(Cell));

    /// <summary>Writes the table without blanks at the ends of its lines.</summary>
    public void Write(TextWriter output)
    {
        using StringWriter text = new();
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(text),
        });
        console.Profile.Width = Unlimited;
        console.Write(_table);
        using StringReader lines = new(text.ToString());
        while (lines.ReadLine() is { } line)
        {
            output.WriteLine((indent + line).TrimEnd());
        }
    }

    private TextTable Add(TableColumn column)
    {
        _table.AddColumn(column.NoWrap().Padding(0, 0, 2, 0));
        return this;
    }

    private static Text Cell(string text) => new(Printable.Of(text));
}
