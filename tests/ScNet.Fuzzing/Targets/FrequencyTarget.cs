using System.Globalization;
using ScNet.Cli.Commands;

namespace ScNet.Fuzzing.Targets;

/// <summary>Lists of frequencies: what is accepted reads the same from the numbers that it says.</summary>
internal static class FrequencyTarget
{
    private const int MaximumPrinted = 50;

    public static void Try(byte[] bytes)
    {
        string text = TextInput.Of(bytes);
        List<string> errors = [];
        double[] frequencies = FrequencyList.Parse(text, "--frequency", errors.Add);
        if (errors.Count > 0)
        {
            return;
        }

        Property.Holds(frequencies.Length > 0 && frequencies.All(f => f is >= 1e-60 and <= 1e60), $"frequencies from 1e-60 to 1e60 Hz, but got {frequencies.Length}");
        if (frequencies.Length <= MaximumPrinted)
        {
            string printed = string.Join(',', frequencies.Select(f => f.ToString("R", CultureInfo.InvariantCulture)));
            Property.Holds(FrequencyList.Parse(printed, "--frequency", errors.Add).SequenceEqual(frequencies) && errors.Count == 0, $"to read {printed} as it was written");
        }
    }
}
