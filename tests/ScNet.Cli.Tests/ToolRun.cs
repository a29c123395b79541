using System.Text;

namespace ScNet.Cli.Tests;

/// <summary>What one command line gave.</summary>
internal sealed record ToolRun(int Code, string Output, string Error)
{
    public static ToolRun Of(params string[] arguments) => Of(new ToolSession(), arguments);

    /// <summary>With a text as standard input.</summary>
    public static ToolRun WithInput(string input, params string[] arguments) => Of(new ToolSession { Input = new MemoryStream(Encoding.UTF8.GetBytes(input)) }, arguments);

    /// <summary>With a session whose output and error are replaced.</summary>
    public static ToolRun Of(ToolSession session, params string[] arguments)
    {
        using StringWriter output = new();
        using StringWriter error = new();
        session.Output = output;
        session.Error = error;
        int code = Tool.Run(arguments, session);
        return new ToolRun(code, output.ToString(), error.ToString());
    }

    public string[] ErrorLines => Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
