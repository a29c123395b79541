using Fractions;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.SteadyState;

namespace ScNet.Design.Choice;

/// <summary>The largest ripple at the output of a candidate, and how many equal parts one after the other keep it as small as it may be.</summary>
/// <remarks>
/// From the exact waveforms of the sized network on a load current with the capacitance at the output. Cycles that are left out are a rest after
/// each; with inductors, which a rest would interrupt, the waveform of the cycles that run and what the load takes meanwhile add up to an upper
/// bound. Looked at are, of each mode, the points that move the largest charge in a cycle and that run slowest. Derivation:
/// docs/theory/parts-steps-and-schedules.md.
/// </remarks>
/// <param name="Parts">The number of parts.</param>
/// <param name="Volts">The ripple, peak to peak, in volts; infinite where nothing holds the output up.</param>
/// <param name="Point">Where it is largest.</param>
/// <param name="RunningHertz">The frequency of the cycles that run there, in hertz (Hz).</param>
/// <param name="HasCoils">Whether it has inductors, and so one part only.</param>
internal sealed record OutputRipple(int Parts, double Volts, ProfilePoint Point, double RunningHertz, bool HasCoils)
{
    private const string AtOutput = "at the output";

    // of shares as fractions
    private const long Resolution = 1L << 40;

    /// <summary>The ripple with the least number of parts that is allowed, or what is left with the most; null for modes without cycles.</summary>
    public static OutputRipple? Of(Requirement requirement, IReadOnlyList<RegulatedMode> modes)
    {
        Instant[] instants = [.. Instants(requirement, modes)];
        if (instants.Length == 0)
        {
            return null;
        }

        // coils are the parts that can be had, and none of them has n times the inductance
        int most = instants.Any(i => i.Held.Inductors.Count > 0) ? 1 : Interleaving.DefaultMaximumParts;
        for (int parts = 1; ; parts++)
        {
            OutputRipple? worst = null;
            foreach (Instant instant in instants)
            {
                OutputRipple own = new(parts, instant.RippleOf(parts), instant.Point, instant.RunningHertz, instant.Held.Inductors.Count > 0);
                worst = worst is null || own.Volts > worst.Volts ? own : worst;
                if (worst.Volts > requirement.RippleVolts && parts < most)
                {
                    break;
                }
            }

            if (worst!.Volts <= requirement.RippleVolts || parts == most)
            {
                return worst;
            }
        }
    }

    private static IEnumerable<Instant> Instants(Requirement requirement, IReadOnlyList<RegulatedMode> modes) => OperatingProfile.Of(requirement)
        .Select(p => (Point: p, Best: BestMode.Of(modes, p.InputVolts, p.SourceOhms(requirement), p.OutputVolts, p.LoadAmperes)))
        .Where(p => p.Best is not null)
        .GroupBy(p => p.Best!.Value.Mode, p => new Instant(p.Point, p.Best!.Value))
        .SelectMany(g => new[] { g.MaxBy(p => p.Charge), g.MinBy(p => p.RunningHertz) }.Distinct().Select(i => (Instant: i, Network: modes[g.Key].NetworkAt(i.Best.Point.Duty))))
        .Where(i => i.Network is not null)
        .Select(i => i.Instant with { Held = WithOutput(i.Network!.Value.Converter, i.Network.Value.Mode, requirement.OutputFarads, i.Instant.Best.Point.RunningShare) })
        .OrderByDescending(p => p.Charge);

    private static Converter WithOutput(Converter converter, Mode mode, double farads, double share)
    {
        Fraction running = share < 1 && converter.Inductors.Count == 0 ? new Fraction((long)Math.Max(1, Math.Round(share * Resolution)), Resolution) : Fraction.One;
        ConverterBuilder builder = Converter.Create(converter.Name).Input(converter.InputNode).Output(converter.OutputNode, LoadKind.Current)
            .Duties([.. converter.Phases.Select(p => p.Duty * running), .. running < Fraction.One ? [Fraction.One - running] : Array.Empty<Fraction>()]);
        builder.AddElements(converter, string.Empty, node => node);
        if (farads > 0)
        {
            builder.Capacitor(AtOutput, converter.OutputNode, Converter.ReferenceNode, farads);
        }

        return builder.Mode(mode.Name, [.. converter.Entries(mode, string.Empty, p => [p])]).Build();
    }

    private readonly record struct Instant(ProfilePoint Point, BestMode Best)
    {
        /// <summary>The network with the capacitance at the output, on a load current.</summary>
        public Converter Held { get; init; } = null!;

        public double InputVolts => Best.Point.InputWatts / Best.CellAmperes;

        public double RunningHertz => Best.Point.FrequencyHz / Best.Point.RunningShare;

        public double Charge => Point.LoadAmperes / Best.Point.FrequencyHz;

        /// <summary>The ripple with a number of parts, infinite where nothing holds the output up in some phase.</summary>
        public double RippleOf(int parts)
        {
            bool isStage = Held.Inductors.Count > 0;
            double across = FaradsAcross(Held), share = Best.Point.RunningShare;
            if (isStage && across == 0)
            {
                return double.PositiveInfinity;
            }

            OperatingPoint point = isStage
                ? new(InputVolts, Point.LoadAmperes / share, RunningHertz)
                : new(InputVolts, Point.LoadAmperes, Best.Point.FrequencyHz);
            return (Interleaving.Of(Held, Held.Modes[0], point, parts).OutputRippleVolts ?? double.PositiveInfinity) + (isStage ? (1 - share) * Charge / across : 0);
        }

        private static double FaradsAcross(Converter converter) => converter.Capacitors.Where(c => IsAcross(converter, c)).Sum(c => c.Farads);

        private static bool IsAcross(Converter converter, Capacitor capacitor) =>
            (capacitor.PositiveNode == converter.OutputNode && capacitor.BottomNode == Converter.ReferenceNode)
            || (capacitor.BottomNode == converter.OutputNode && capacitor.PositiveNode == Converter.ReferenceNode);
    }
}
