using System.Text;
using System.Text.RegularExpressions;

namespace ScNet.Cli;

/// <summary>Standard error on a terminal with colours: the word that says how grave a message is stands out.</summary>
/// <param name="inner">The terminal.</param>
internal sealed partial class ColouredMessages(TextWriter inner) : TextWriter
{
    // ECMA-48, select graphic rendition: bold red, bold yellow, all off
    private const string Red = "\u001b[1;31m", Yellow = "\u001b[1;33m", Off = "\u001b[0m";

    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => inner.Write(value);

    public override void Write(string? value) => inner.Write(value);

    public override void WriteLine(string? value)
    {
        inner.Write(Grave().Replace(value ?? string.Empty, m => (m.Value == "warning" ? Yellow : Red) + m.Value + Off, 1));
        inner.Write(NewLine);
    }

    public override void Flush() => inner.Flush();

    // a finding is told as "place: error code: message", a mistake of the command line as "scnet: message"
    [GeneratedRegex("(?<=^|: )(error|warning)(?= [a-z-]+: )|^scnet(?=: )")]
    private static partial Regex Grave();
}
