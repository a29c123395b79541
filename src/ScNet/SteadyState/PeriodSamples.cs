using System.Globalization;

namespace ScNet.SteadyState;

/// <summary>Values of signals at times of a period.</summary>
/// <param name="durations">The length of each phase in seconds.</param>
/// <param name="frequencyHz">The frequency of the period.</param>
internal sealed class PeriodSamples(double[] durations, double frequencyHz)
{
    // relative to the time that is rounded
    private const double BoundaryRounding = 1e-15;

    /// <summary>The values of a signal; null at times in phases that have none.</summary>
    /// <param name="times">Times in seconds from the start of phase 1, taken modulo the period.</param>
    /// <param name="waveform">The signal of a phase, from 0.</param>
    public double?[] Of(IReadOnlyList<double> times, Func<int, PhaseWaveform?> waveform)
    {
        ArgumentNullException.ThrowIfNull(times);
        PhaseWaveform?[] waveforms = [.. durations.Select((_, j) => waveform(j))];
        var values = new double?[times.Count];
        for (int i = 0; i < values.Length; i++)
        {
            (int phase, double time) = Locate(times, i);
            values[i] = waveforms[phase]?.At(time);
        }

        return values;
    }

    // The phase at a time and the time since its start. A time that rounding alone puts before a boundary is on it.
    private (int Phase, double Time) Locate(IReadOnlyList<double> timesSeconds, int index)
    {
        double periods = timesSeconds[index] * frequencyHz;
        if (!double.IsFinite(periods))
        {
            throw new ArgumentOutOfRangeException(
                nameof(timesSeconds), timesSeconds[index], $"Expected finite times in seconds, but the one at index {index.ToString(CultureInfo.InvariantCulture)} is not.");
        }

        double rounding = BoundaryRounding * Math.Max(1, Math.Abs(periods)) / frequencyHz;
        double rest = (periods - Math.Floor(periods)) / frequencyHz;
        for (int phase = 0; phase < durations.Length; phase++)
        {
            double duration = durations[phase];
            if (rest < duration - Math.Min(rounding, 0.5 * duration))
            {
                return (phase, Math.Max(0, rest));
            }

            rest -= duration;
        }

        return (0, 0);
    }
}
