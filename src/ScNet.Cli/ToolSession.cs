using System.CommandLine;
using ScNet.Results.Pages;

namespace ScNet.Cli;

/// <summary>What a run of the tool reads from and writes to, and what it knows of the terminal.</summary>
internal sealed class ToolSession : InvocationConfiguration
{
    private bool _isInputRead;
    private bool _hasPage;

    public ToolSession() => EnableDefaultExceptionHandler = false;

    /// <summary>The name on the command line that stands for standard input.</summary>
    public const string InputName = "-";

    /// <summary>What standard input is called in messages and results.</summary>
    public const string InputTitle = "standard input";

    /// <summary>Standard input; nothing where left out.</summary>
    public Stream Input { get; init; } = Stream.Null;

    /// <summary>The most columns of a line of text: those of the terminal where the output is one.</summary>
    public int Width { get; init; } = Page.UsualWidth;

    /// <summary>Whether headings and cautions are coloured: only on a terminal.</summary>
    public bool HasColour { get; init; }

    /// <summary>Whether long work says on standard error how far it is: only where that is a terminal.</summary>
    public bool ShowsProgress { get; init; }

    /// <summary>Stops long work; what is done until then is written.</summary>
    public CancellationToken CancellationToken { get; init; }

    /// <summary>The session of a command that runs.</summary>
    public static ToolSession Of(ParseResult parsed) => (ToolSession)parsed.InvocationConfiguration;

    /// <summary>Writes a page, a blank line between one and the next.</summary>
    public void Write(Page page)
    {
        if (_hasPage)
        {
            Output.WriteLine();
        }

        _hasPage = true;
        Output.Write(page.ToText(Width, HasColour));
    }

    /// <summary>Does long work, and says on a line of the terminal how far it is, where there is a terminal to say it on.</summary>
    /// <param name="done">What is being done, as what is done: "searched".</param>
    /// <param name="work">The work; it tells how far it is, where anybody listens, and writes what is wrong, which appears below the line.</param>
    public T Follow<T>(string done, Func<IProgress<double>?, TextWriter, T> work)
    {
        if (!ShowsProgress)
        {
            return work(null, Error);
        }

        using StringWriter messages = new() { NewLine = "\n" };
        try
        {
            using ProgressLine line = new(Error, done, TimeProvider.System);
            return work(line, messages);
        }
        finally
        {
            foreach (string message in messages.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries))
            {
                Error.WriteLine(message);
            }
        }
    }

    /// <summary>The same for work that has nothing else to say.</summary>
    public T Follow<T>(string done, Func<IProgress<double>?, T> work) => Follow(done, (progress, _) => work(progress));

    /// <summary>Reads what a path names with one of two readers: standard input, which can be read once, or a file.</summary>
    public T? Read<T>(string path, Func<Stream, string, T> ofStream, Func<string, T> ofFile)
        where T : class
    {
        if (path != InputName)
        {
            return ofFile(path);
        }

        if (_isInputRead)
        {
            Error.WriteLine("Standard input can be read once only: give - in one place.");
            return null;
        }

        _isInputRead = true;
        return ofStream(Input, InputTitle);
    }
}
