namespace ScNet.SteadyState;

/// <summary>How far a signal goes over a whole period, extremes inside the phases included.</summary>
internal static class WaveformRange
{
    /// <summary>Largest less least value over all phases.</summary>
    public static double PeakToPeak(IEnumerable<PhaseWaveform> phases)
    {
        Interval<double> hull = phases.Select(Of).Aggregate((a, b) => a.Hull(b));
        return hull.Maximum!.Value - hull.Minimum!.Value;
    }

    /// <summary>Least and largest value over one phase.</summary>
    public static Interval<double> Of(PhaseWaveform phase)
    {
        (double minimum, double maximum) = phase.Extremes();
        return new Interval<double>(minimum, maximum, IntervalState.Determined);
    }

    /// <summary>The value of the largest magnitude over the phases that have a signal; zero where none has.</summary>
    public static double Peak(IEnumerable<PhaseWaveform?> phases)
    {
        double peak = 0;
        foreach (PhaseWaveform waveform in phases.OfType<PhaseWaveform>())
        {
            (double least, double greatest) = waveform.Extremes();
            peak = -least > Math.Max(greatest, Math.Abs(peak)) ? least : greatest > Math.Abs(peak) ? greatest : peak;
        }

        return peak;
    }
}
