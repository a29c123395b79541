using System.Diagnostics;
using System.Globalization;

namespace ScNet.Fuzzing;

/// <summary>Runs a file again, for a person who looks into what a campaign found.</summary>
internal static class Replay
{
    /// <summary>Runs a file, says what came of it, and whether every property holds.</summary>
    public static bool Report(FuzzTarget target, string path)
    {
        Stopwatch clock = Stopwatch.StartNew();
        try
        {
            long allocated = FuzzRun.Execute(target, File.ReadAllBytes(path));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{path}: holds, {allocated} bytes allocated, {clock.Elapsed.TotalMilliseconds:F1} ms"));
            return true;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{path}: BROKEN after {clock.Elapsed.TotalMilliseconds:F1} ms\n{fault}"));
            return false;
        }
    }
}
