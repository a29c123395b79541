using ScNet.Analysis;

namespace ScNet.Reconfiguration;

/// <summary>One way to gate a set of switches, with what it amounts to.</summary>
public sealed class GatePattern
{
    private GatePattern(ModeAnalysis analysis)
    {
        Analysis = analysis;
        Quantity[] peaks = [.. analysis.BlockingVoltages.Peaks.Where(p => p.IsDetermined)];
        UndeterminedSwitchCount = analysis.BlockingVoltages.Peaks.Count - peaks.Length;
        PeakBlocking = peaks.Length == 0 ? Quantity.Undetermined : peaks.Aggregate(
            (a, b) => QuantityMagnitude.Compare(b, a) > 0 ? b : a);
    }

    /// <summary>The analysis of the pattern as the only mode of the converter.</summary>
    public ModeAnalysis Analysis { get; }

    /// <summary>The phases in which each switch is closed; index as in <see cref="Converter.Switches"/>.</summary>
    public IReadOnlyList<PhaseSet> ClosedPhases => Analysis.Mode.ClosedPhases;

    /// <summary>The slow-switching limit in ohms (Ω) at 1 Hz.</summary>
    public double SlowOhmsAtOneHertz => Analysis.SlowSwitchingLimit.OhmsAtOneHertz;

    /// <summary>The fast-switching limit in ohms (Ω).</summary>
    public double FastOhms => Analysis.FastSwitchingLimit.Ohms;

    /// <summary>The blocking voltage of the largest magnitude among the switches for which it is determined, per volt of input.</summary>
    public Quantity PeakBlocking { get; }

    /// <summary>How many switches see a floating node, so that nothing determines what they block.</summary>
    public int UndeterminedSwitchCount { get; }

    /// <summary>How often a switch is closed, counted over switches and phases: a measure of gate-drive effort.</summary>
    public int ClosingCount => ClosedPhases.Sum(p => p.Count);

    /// <summary>The pattern that closes one set of switches in each of two phases, a bit per switch; it must have a result.</summary>
    internal static GatePattern Of(Converter converter, int first, int second)
    {
        Converter own = converter.WithModes(("pattern", ClosedPhasesOf(converter, first, second)));
        return new GatePattern(ModeAnalysis.Of(own, own.Modes[0]));
    }

    /// <summary>The text of the pattern that closes one set of switches in each of two phases.</summary>
    internal static string Text(Converter converter, int first, int second) => Text(converter, ClosedPhasesOf(converter, first, second));

    /// <summary>What the choice among patterns goes by.</summary>
    internal PatternMeasure Measure => new(
        SetIn(1), SetIn(2), SlowOhmsAtOneHertz, FastOhms, UndeterminedSwitchCount, PeakBlocking.IsDetermined ? Math.Abs(PeakBlocking.ToDouble()) : 0);

    private static PhaseSet[] ClosedPhasesOf(Converter converter, int first, int second)
    {
        var phases = new PhaseSet[converter.Switches.Count];
        for (int s = 0; s < phases.Length; s++)
        {
            bool inFirst = ((first >> s) & 1) != 0, inSecond = ((second >> s) & 1) != 0;
            phases[s] = inFirst ? (inSecond ? PhaseSet.Of(1, 2) : PhaseSet.Of(1)) : inSecond ? PhaseSet.Of(2) : PhaseSet.None;
        }

        return phases;
    }

    /// <summary>The same pattern with switches opened that carry no charge, as long as it does not get worse in an order.</summary>
    internal GatePattern Thinned(IComparer<PatternMeasure> order)
    {
        GatePattern best = this;
        for (int s = 0; s < ClosedPhases.Count; s++)
        {
            for (int phase = 1; phase <= 2; phase++)
            {
                if (!best.ClosedPhases[s].Contains(phase) || best.Analysis.ChargeFlow.Switches[s][phase] != Quantity.Zero)
                {
                    continue;
                }

                int opened = 1 << s;
                GatePattern thinner = Of(
                    Analysis.Converter,
                    best.SetIn(1) & ~(phase == 1 ? opened : 0),
                    best.SetIn(2) & ~(phase == 2 ? opened : 0));
                best = order.Compare(thinner.Measure, best.Measure) < 0 ? thinner : best;
            }
        }

        return best;
    }

    /// <summary>Each switch that closes with its phases.</summary>
    public override string ToString() => Text(Analysis.Converter, ClosedPhases);

    private static string Text(Converter converter, IReadOnlyList<PhaseSet> closedPhases) => string.Join(", ", converter.Switches
        .Select((s, i) => (s.Name, Phases: closedPhases[i])).Where(s => s.Phases.Count > 0).Select(s => $"{s.Name} {s.Phases}"));

    private int SetIn(int phase)
    {
        int set = 0;
        for (int s = 0; s < ClosedPhases.Count; s++)
        {
            set |= ClosedPhases[s].Contains(phase) ? 1 << s : 0;
        }

        return set;
    }
}
