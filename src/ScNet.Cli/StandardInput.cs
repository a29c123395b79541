using System.Globalization;

namespace ScNet.Cli;

/// <summary>Standard input, or what says that there is none.</summary>
/// <remarks>
/// Where it is closed on Linux the next file that is opened takes its number: the runtime would read from a pipe of its own, and wait for
/// ever. What was handed over by whoever started the process never closes at a start, what the runtime opened does.
/// </remarks>
internal static class StandardInput
{
    private const string Information = "/proc/self/fdinfo/0", Flags = "flags:";

    // O_CLOEXEC, the same on every Linux that the runtime knows
    private const int ClosesAtStart = 0x80000;

    /// <summary>Opens it.</summary>
    public static Stream Open() => OperatingSystem.IsLinux() && File.Exists(Information) && IsForeign(File.ReadLines(Information)) ? new ClosedStream() : Console.OpenStandardInput();

    /// <summary>Whether a descriptor was opened by the process itself, by what the system says of it.</summary>
    public static bool IsForeign(IEnumerable<string> information) => information.Any(line =>
        line.StartsWith(Flags, StringComparison.Ordinal) && (Octal(line[Flags.Length..].Trim()) & ClosesAtStart) != 0);

    private static long Octal(string digits) => digits.Aggregate(0L, (value, digit) => (value * 8) + CharUnicodeInfo.GetDecimalDigitValue(digit));

    private sealed class ClosedStream : MemoryStream
    {
        public override int Read(byte[] buffer, int offset, int count) => throw Closed();

        public override int Read(Span<byte> buffer) => throw Closed();

        private static IOException Closed() => new("It is closed. Give the document on it, or the path of a file.");
    }
}
