namespace ScNet.Design.Regulation;

/// <summary>Which mode serves at which input voltage, with bands that overlap so that no two modes chatter.</summary>
/// <remarks>
/// Changing the mode changes the input current, and that the voltage behind the source's resistance. Where neighbours overlap by more than
/// this change and the margin, a change never undoes itself: docs/theory/parts-steps-and-schedules.md. Best is the mode of the highest efficiency. Borders are
/// looked for between <see cref="GridPoints"/> voltages evenly over the range and then halved to rounding.
/// </remarks>
public sealed class ModeSchedule
{
    /// <summary>How many input voltages are looked at before borders are refined; a narrower band may be missed.</summary>
    public const int GridPoints = 257;

    // modes as good as each other change places from rounding to rounding: what is so narrow, relative to the range, is no band
    private const double Narrow = 1e-9;
    private const int None = -1;

    private ModeSchedule(IReadOnlyList<ModeBand> bands, IReadOnlyList<Interval<double>> gaps, IReadOnlyList<string> warnings) =>
        (Bands, Gaps, Warnings) = (bands, gaps, warnings);

    /// <summary>The bands by rising input voltage; neighbours overlap, unless a gap is between them.</summary>
    public IReadOnlyList<ModeBand> Bands { get; }

    /// <summary>Ranges of the input voltage in volts (V) in which no mode holds the output.</summary>
    public IReadOnlyList<Interval<double>> Gaps { get; }

    /// <summary>Neighbours that cannot overlap far enough, in words; empty where nothing chatters.</summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>Plans a schedule.</summary>
    /// <param name="modes">The modes, at least one.</param>
    /// <param name="inputVolts">The range of the input voltage in volts (V).</param>
    /// <param name="outputVolts">The output voltage in volts (V) to be held.</param>
    /// <param name="loadAmperes">The load current in amperes (A).</param>
    /// <param name="sourceOhms">The resistance of the source in ohms (Ω).</param>
    /// <param name="marginVolts">By how much more neighbours overlap, in volts (V): noise and ripple of the input, peak to peak.</param>
    /// <exception cref="ArgumentException">There is no mode, or the range is not determined.</exception>
    public static ModeSchedule Of(
        IReadOnlyList<RegulatedMode> modes, Interval<double> inputVolts, double outputVolts, double loadAmperes, double sourceOhms, double marginVolts)
    {
        modes = Guard.Copy(modes, nameof(modes));
        if (modes.Count == 0 || !inputVolts.IsDetermined)
        {
            throw new ArgumentException("Expected at least one mode and a range of the input voltage.", nameof(modes));
        }

        _ = Guard.InRange(sourceOhms, allowZero: true, nameof(sourceOhms));
        _ = Guard.InRange(marginVolts, allowZero: true, nameof(marginVolts));
        List<(int Best, double From, double To)> stretches = Stretches(inputVolts, v => BestMode.Of(modes, v, 0, outputVolts, loadAmperes)?.Mode ?? None);
        List<string> warnings = [];
        double[] lowest = [.. stretches.Select(s => s.From)], highest = [.. stretches.Select(s => s.To)];
        for (int k = 0; k + 1 < stretches.Count; k++)
        {
            if (stretches[k].Best != None && stretches[k + 1].Best != None)
            {
                Overlap(k);
            }
        }

        return new ModeSchedule(
            [.. Enumerable.Range(0, stretches.Count).Where(k => stretches[k].Best != None).Select(k => new ModeBand(modes[stretches[k].Best], lowest[k], highest[k]))],
            [.. stretches.Where(s => s.Best == None).Select(s => new Interval<double>(s.From, s.To))],
            [.. warnings]);

        void Overlap(int k)
        {
            RegulatedMode below = modes[stretches[k].Best], above = modes[stretches[k + 1].Best];
            double border = stretches[k].To;

            // raising the upper end of the band below, else lowering the lower end of the band above
            double width = Width(below, above, border, border);
            width = Width(below, above, border, border + width);
            double upper = Math.Min(border + width, inputVolts.Maximum!.Value), lower = Math.Max(border - width, inputVolts.Minimum!.Value);
            if (below.Hold(upper, outputVolts, loadAmperes).IsHeld)
            {
                highest[k] = upper;
            }
            else if (above.Hold(lower, outputVolts, loadAmperes).IsHeld)
            {
                lowest[k + 1] = lower;
            }
            else
            {
                warnings.Add($"{below} and {above} cannot overlap by {UnitText.Of(width, "V")} at {UnitText.Of(border, "V")}, as neither holds the output so far beyond: they may chatter. Lower the source's resistance or add a mode between them.");
            }
        }

        double Width(RegulatedMode below, RegulatedMode above, double first, double second) => marginVolts + (sourceOhms * Math.Max(
            Math.Abs(InputAmperes(below, first) - InputAmperes(above, first)), Math.Abs(InputAmperes(below, second) - InputAmperes(above, second))));

        double InputAmperes(RegulatedMode mode, double volts) => mode.Hold(volts, outputVolts, loadAmperes) is { IsHeld: true } point ? point.InputWatts / volts : 0;
    }

    /// <summary>The band that serves next.</summary>
    /// <param name="band">The band now, from 0.</param>
    /// <param name="inputVolts">The input voltage in volts (V) now.</param>
    public int Next(int band, double inputVolts)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(band);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(band, Bands.Count);
        while (band > 0 && inputVolts < Bands[band].LowestVolts)
        {
            band--;
        }

        while (band + 1 < Bands.Count && inputVolts > Bands[band].HighestVolts)
        {
            band++;
        }

        return band;
    }

    /// <summary>The bands and the gaps.</summary>
    public override string ToString() =>
        $"{string.Join("; ", Bands)}{(Gaps.Count > 0 ? $"; no mode at {string.Join(", ", Gaps.Select(g => g.ToString("V")))}" : string.Empty)}";

    private static List<(int Best, double From, double To)> Stretches(Interval<double> range, Func<double, int> best)
    {
        double from = range.Minimum!.Value, to = range.Maximum!.Value;
        List<(int Best, double From)> stretches = [(best(from), from)];
        double last = from;
        for (int k = 1; k < GridPoints; k++)
        {
            double now = k == GridPoints - 1 ? to : from + ((to - from) * k / (GridPoints - 1));
            int wanted = best(now);
            while (stretches[^1].Best != wanted)
            {
                // the first voltage at which another mode is best; there may be several between two of the grid
                (double low, double high, int first) = (last, now, wanted);
                while (low + ((high - low) / 2) is var middle && middle > low && middle < high)
                {
                    int there = best(middle);
                    (low, high, first) = there == stretches[^1].Best ? (middle, high, first) : (low, middle, there);
                }

                last = high;
                if (high - stretches[^1].From < Narrow * (to - from))
                {
                    high = stretches[^1].From;
                    stretches.RemoveAt(stretches.Count - 1);
                }

                if (stretches.Count == 0 || stretches[^1].Best != first)
                {
                    stretches.Add((first, high));
                }
            }

            last = now;
        }

        return [.. stretches.Select((s, k) => (s.Best, s.From, k + 1 < stretches.Count ? stretches[k + 1].From : to))];
    }
}
