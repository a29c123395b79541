using System.Globalization;

namespace ScNet.Stress;

/// <summary>Where a voltage occurs, as text: "mode 1/3, phase 2" or "change from 1/2 to 1/3, phase 1".</summary>
internal static class StressPlace
{
    public static string Text(Mode mode, Mode? from, int? phase)
    {
        string number = phase is { } known ? string.Create(CultureInfo.InvariantCulture, $", phase {known}") : string.Empty;
        return (from is null ? $"mode {mode}" : $"change from {from} to {mode}") + number;
    }
}
