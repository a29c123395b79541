namespace ScNet.Cli.Tests;

/// <summary>What one command line gave.</summary>
internal sealed record ToolRun(int Code, string Output, string Error)
{
    public static ToolRun Of(params string[] arguments)
    {
        using StringWriter output = new();
        using StringWriter error = new();
        int code = Tool.Run(arguments, output, error);
        return new ToolRun(code, output.ToString(), error.ToString());
    }

    public string[] ErrorLines => Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
