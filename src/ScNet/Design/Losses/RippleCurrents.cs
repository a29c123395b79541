using ScNet.Analysis;

namespace ScNet.Design.Losses;

/// <summary>
/// The ripple of inductor currents as straight lines, and what it adds to the currents of switches and capacitors, at
/// one volt of input and one hertz; all of it is in proportion to voltage and period.
/// </summary>
/// <remarks>
/// Equations: docs/theory/losses.md, "Ripple". The average of an inductor's current stays that of the load; the voltages
/// are those without load, as <see cref="InductorAnalysis.Voltage"/> has them.
/// </remarks>
internal sealed class RippleCurrents
{
    private RippleCurrents(Converter converter, Mode mode, double[][] voltages, double[] duties)
    {
        int phases = duties.Length;
        bool isNone = converter.Inductors.Count == 0;
        Inductors = StraightLines.Of(phases, converter.Inductors.Count) with { IsNone = isNone };
        Switches = StraightLines.Of(phases, converter.Switches.Count) with { IsNone = isNone };
        Capacitors = StraightLines.Of(phases, converter.Capacitors.Count) with { IsNone = isNone };
        for (int l = 0; l < converter.Inductors.Count; l++)
        {
            Rise(l, voltages[l], duties, converter.Inductors[l].Henries);
        }

        for (int j = 0; j < phases && !isNone; j++)
        {
            CurrentSplit split = new(converter, converter.Network.ClosedIn(mode.Index, j).ToArray());
            split.TryDivide(Inductors.Means[j], Switches.Means[j], Capacitors.Means[j]);
            split.TryDivide(Inductors.Rises[j], Switches.Rises[j], Capacitors.Rises[j]);
        }
    }

    /// <summary>The ripple of the inductors.</summary>
    public StraightLines Inductors { get; }

    /// <summary>What of it the switches carry.</summary>
    public StraightLines Switches { get; }

    /// <summary>What of it capacitors with a series resistance carry.</summary>
    public StraightLines Capacitors { get; }

    /// <summary>The ripple of an inductor peak to peak in amperes; it is straight between the ends of phases.</summary>
    public double PeakToPeak(int inductor)
    {
        double at = 0, least = 0, most = 0;
        foreach (double[] rises in Inductors.Rises)
        {
            at += rises[inductor];
            (least, most) = (Math.Min(least, at), Math.Max(most, at));
        }

        return most - least;
    }

    /// <summary>Finds the ripple of a mode.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="duties">The duties of its phases.</param>
    /// <param name="unknown">The inductors whose ripple is taken as none, since only losses fix their voltage.</param>
    public static RippleCurrents Of(ModeAnalysis analysis, double[] duties, out IReadOnlyList<string> unknown)
    {
        unknown = [.. analysis.Inductors.Where(l => l.Voltage.Any(v => !v.IsDetermined)).Select(l => l.Inductor.Name)];
        double[][] voltages = [.. analysis.Inductors.Select(l => l.Voltage.Any(v => !v.IsDetermined)
            ? new double[duties.Length]
            : (double[])[.. l.Voltage.Select(v => v.ToDouble())])];
        return new RippleCurrents(analysis.Converter, analysis.Mode, voltages, duties);
    }

    private void Rise(int inductor, double[] voltages, double[] duties, double henries)
    {
        double current = 0, average = 0;
        for (int j = 0; j < duties.Length; j++)
        {
            double rise = voltages[j] * duties[j] / henries;
            Inductors.Rises[j][inductor] = rise;
            Inductors.Means[j][inductor] = current + (0.5 * rise);
            average += duties[j] * Inductors.Means[j][inductor];
            current += rise;
        }

        for (int j = 0; j < duties.Length; j++)
        {
            Inductors.Means[j][inductor] -= average;
        }
    }
}
