using System.Globalization;

namespace ScNet.Cli;

/// <summary>How far a long work is and how long it may still take, on one line of a terminal that is written over and wiped at the end.</summary>
/// <param name="terminal">The terminal.</param>
/// <param name="done">What is being done, as what is done: "searched".</param>
/// <param name="time">The clock by which what is left is estimated; null leaves that out.</param>
internal sealed class ProgressLine(TextWriter terminal, string done = "searched", TimeProvider? time = null) : IProgress<double>, IDisposable
{
    private const int Whole = 100;

    private readonly Lock _lock = new();
    private readonly long _start = time?.GetTimestamp() ?? 0;
    private int _shown = -1;
    private int _length;

    /// <summary>Takes the fraction done, from any thread and in any order.</summary>
    public void Report(double value)
    {
        int percent = (int)(value * Whole);
        lock (_lock)
        {
            if (percent > _shown)
            {
                _shown = percent;
                string line = string.Create(CultureInfo.InvariantCulture, $"{percent,3} % {done}{Left(value)}");
                terminal.Write($"\r{line.PadRight(_length)}");
                _length = Math.Max(_length, line.Length);
            }
        }
    }

    /// <summary>Wipes the line.</summary>
    public void Dispose()
    {
        lock (_lock)
        {
            if (_shown >= 0)
            {
                terminal.Write($"\r{new string(' ', _length)}\r");
            }
        }
    }

    // as long again per fraction as until now
    private string Left(double value)
    {
        if (time is null || value is <= 0 or >= 1)
        {
            return string.Empty;
        }

        double seconds = Math.Ceiling(time.GetElapsedTime(_start).TotalSeconds * (1 - value) / value);
        return seconds < 60
            ? string.Create(CultureInfo.InvariantCulture, $", about {seconds:F0} s left")
            : string.Create(CultureInfo.InvariantCulture, $", about {Math.Ceiling(seconds / 60):F0} min left");
    }
}
