using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Design;

/// <summary>
/// A converter whose phases are cut into parts, in which some switch closes later or opens earlier, and are as long as it
/// takes for capacitors to have equal voltages when they are connected: charging is then fully soft.
/// </summary>
/// <remarks>
/// Between capacitors that a phase connects in parallel while a held current charges them, voltages move as straight lines.
/// A branch that is joined once the voltages meet shares the current from then on without an impulse. Source: Y. Lei, R. May
/// and R. Pilawa-Podgurski, "Split-phase control: achieving complete soft-charging operation of a Dickson switched-capacitor
/// converter", IEEE Trans. Power Electronics 31(1), 2016 (from memory); equations in docs/theory/split-phase.md.
/// </remarks>
public sealed class SplitPhase
{
    private SplitPhase(Converter converter, Mode mode, IEnumerable<int> originalPhases, double ohmsAtOneHertz, string reason)
    {
        (Converter, Mode, OriginalPhases) = (converter, mode, [.. originalPhases]);
        (OhmsAtOneHertz, Reason) = (ohmsAtOneHertz, reason);
    }

    /// <summary>The converter with its new phases and durations; the given one where nothing better was found.</summary>
    public Converter Converter { get; }

    /// <summary>The mode of <see cref="Converter"/>.</summary>
    public Mode Mode { get; }

    /// <summary>For each phase of <see cref="Converter"/> the number, from 1, of the given phase of which it is a part.</summary>
    public IReadOnlyList<int> OriginalPhases { get; }

    /// <summary>The share of each phase in the period, exact for the capacitances as they are written.</summary>
    public IReadOnlyList<Fraction> Durations => [.. Converter.Phases.Select(p => p.Duty)];

    /// <summary>Whether no charge is left to impulses.</summary>
    public bool IsSoft => Reason.Length == 0;

    /// <summary>
    /// What is left of the impedance at low frequency, in ohms (Ω) at a switching frequency of 1 Hz: zero where charging is
    /// soft, infinite where averages can carry no load.
    /// </summary>
    public double OhmsAtOneHertz { get; }

    /// <summary>Why charging is not fully soft; empty where it is.</summary>
    public string Reason { get; }

    /// <summary>Splits the phases of a mode as little as it takes; where that does not do, finds the durations of the given phases that lose the least.</summary>
    /// <param name="converter">A converter with inductors or a load current.</param>
    /// <param name="mode">The mode.</param>
    /// <exception cref="ArgumentException">The mode is not one of the converter's, or an inductor's current ends one of its phases.</exception>
    /// <exception cref="ScNetException">The mode has no result.</exception>
    /// <remarks>At most two cuts per phase and 1000 ways in all are tried, each the exact solution of some linear equations. Currents of several inductors keep their proportion.</remarks>
    public static SplitPhase Of(Converter converter, Mode mode)
    {
        ArgumentNullException.ThrowIfNull(converter);
        ModeAnalysis analysis = ModeAnalysis.Of(converter, mode);
        if (mode.UntilZeroPhases.Any(p => p.Count > 0))
        {
            throw new ArgumentException($"Expected phases of fixed length, but an inductor's current ends a phase of mode '{mode.Name}'.", nameof(mode));
        }

        SwitchedNetwork network = converter.Network;
        if (network.HeldCurrentCount == 0)
        {
            return Unchanged(analysis, "Nothing in the circuit holds a current: all charge moves in impulses.");
        }

        if (Currents(analysis) is not { } currents)
        {
            return Unchanged(analysis, "The proportion of the held currents is not fixed by averages.");
        }

        Rational<BigInteger>[] elastances =
            [.. converter.Capacitors.Select(c => ExactDecimal.Of(c.Farads)).Select(f => Rational<BigInteger>.Of(f.Denominator, f.Numerator))];
        PhaseSplits splits = new(
            [.. Enumerable.Range(0, network.PhaseCount).Select(j => network.ClosedIn(mode.Index, j).ToArray())],
            (number, closed) => SteadyPhase.Of(network, elastances, currents, number, closed));
        if (splits.Whole is not { } whole)
        {
            return Unchanged(analysis, "A held current has no path of its own in some phase.");
        }

        if (analysis.ChargeSharing is { } given && given.Coefficients.All(k => k.IsExact && k.Sign == 0))
        {
            return Unchanged(analysis, string.Empty);
        }

        foreach (IReadOnlyList<SteadyPhase> way in splits.All())
        {
            if (PhaseDurations.Soft(way, elastances) is { } durations)
            {
                Converter split = Built(converter, mode, way, durations);
                return new SplitPhase(split, split.Modes[0], way.Select(p => p.Number), 0, string.Empty);
            }
        }

        const string Reason = "No split of the phases into parts of positive length lets all voltages meet; the durations of the given phases lose the least that they can.";
        if (PhaseDurations.Least(whole, elastances) is { } least)
        {
            Converter better = converter.WithDuties(least);
            Mode own = better.Modes[mode.Index];
            return new SplitPhase(better, own, whole.Select(p => p.Number), ModeAnalysis.Of(better, own).ChargeSharing?.OhmsAtOneHertz ?? double.PositiveInfinity, Reason);
        }

        return Unchanged(analysis, "Neither a split of the phases into parts of positive length nor other durations of the given ones were found.");
    }

    /// <summary>The durations and what is left of charge sharing.</summary>
    public override string ToString() =>
        $"{Converter.Name}: phases of {string.Join(", ", Durations)}; {(IsSoft ? "fully soft" : $"{UnitText.Of(OhmsAtOneHertz, "Ω")} of charge sharing at 1 Hz left: {Reason}")}";

    private static SplitPhase Unchanged(ModeAnalysis analysis, string reason) => new(
        analysis.Converter,
        analysis.Mode,
        analysis.Converter.Phases.Select(p => p.Number),
        reason.Length == 0 ? 0 : analysis.ChargeSharing?.OhmsAtOneHertz ?? double.PositiveInfinity,
        reason);

    // one alone is a matter of scale
    private static Rational<BigInteger>[]? Currents(ModeAnalysis analysis)
    {
        SwitchedNetwork network = analysis.Converter.Network;
        if (network.HeldCurrentCount == 1)
        {
            return [Rational<BigInteger>.One];
        }

        Quantity[] found = [.. network.HeldCurrents.AsSpan(0, network.HeldCurrentCount).ToArray().Select(b =>
            b < network.FirstInductorBranch ? Quantity.Exact(1) : analysis.Inductors[b - network.FirstInductorBranch].Current)];
        return Array.TrueForAll(found, c => c.IsExact) ? Array.ConvertAll(found, c => Rational<BigInteger>.Of(c.ToFraction())) : null;
    }

    private static Converter Built(Converter converter, Mode mode, IReadOnlyList<SteadyPhase> phases, Fraction[] durations)
    {
        ConverterBuilder builder = Converter.Create($"{converter.Name}, split phases")
            .Input(converter.InputNode).Output(converter.OutputNode, converter.Load).Duties(durations);
        builder.AddElements(converter, string.Empty, node => node);
        return builder.Mode(mode.Name, [.. converter.Switches.Select((s, i) =>
            (s.Name, PhaseSet.Of([.. Enumerable.Range(1, phases.Count).Where(p => phases[p - 1].Closed[i])])))]).Build();
    }
}
