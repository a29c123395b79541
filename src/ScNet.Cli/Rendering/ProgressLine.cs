using System.Globalization;

namespace ScNet.Cli.Rendering;

/// <summary>How far a search is, on one line of a terminal that is written over and wiped at the end.</summary>
internal sealed class ProgressLine(TextWriter terminal) : IProgress<double>, IDisposable
{
    private const int Whole = 100;

    private readonly Lock _lock = new();
    private int _shown = -1;

    /// <summary>Takes the fraction done, from any thread and in any order.</summary>
    public void Report(double value)
    {
        int percent = (int)(value * Whole);
        lock (_lock)
        {
            if (percent > _shown)
            {
                _shown = percent;
                terminal.Write(string.Create(CultureInfo.InvariantCulture, $"\r{percent,3} % searched"));
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
                terminal.Write($"\r{new string(' ', "100 % searched".Length)}\r");
            }
        }
    }
}
