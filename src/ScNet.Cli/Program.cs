using System.Globalization;
using System.Text;
using ScNet.Cli;

// One language and one encoding, wherever the tool runs.
CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
UTF8Encoding encoding = new(encoderShouldEmitUTF8Identifier: false);
using StreamWriter output = new(new StandardOutput(Console.OpenStandardOutput()), encoding, bufferSize: 1 << 16);
using StreamWriter error = new(new StandardOutput(Console.OpenStandardError()), encoding) { AutoFlush = true };
using Stream input = StandardInput.Open();
return Tool.Run(args, new ToolSession
{
    Input = input,
    Output = output,
    Error = Terminal.HasColour(Console.IsErrorRedirected) ? new ColouredMessages(error) : error,
    Width = Terminal.Width(),
    HasColour = Terminal.HasColour(Console.IsOutputRedirected),
    ShowsProgress = !Console.IsErrorRedirected,
});
