using ScNet.Analysis;

namespace ScNet.Reconfiguration;

/// <summary>One way to gate a set of switches, with what it amounts to.</summary>
public sealed class GatePattern
{
    internal GatePattern(ModeAnalysis analysis)
    {
        Analysis = analysis;
        Quantity[] peaks = [.. analysis.BlockingVoltages.Peaks.Where(p => p.IsDetermined)];
        UndeterminedSwitchCount = analysis.BlockingVoltages.Peaks.Count - peaks.Length;
        HighestBlocking = peaks.Length == 0 ? Quantity.Undetermined : peaks.Aggregate(
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
    public Quantity HighestBlocking { get; }

    /// <summary>How many switches see a floating node, so that nothing determines what they block.</summary>
    public int UndeterminedSwitchCount { get; }

    /// <summary>How often a switch is closed, counted over switches and phases: a measure of gate-drive effort.</summary>
    public int ClosingCount => ClosedPhases.Sum(p => p.Count);

    /// <summary>Each switch that closes with its phases.</summary>
    public override string ToString() => string.Join(", ", Analysis.Converter.Switches
        .Select((s, i) => (s.Name, Phases: ClosedPhases[i])).Where(s => s.Phases.Count > 0).Select(s => $"{s.Name} {s.Phases}"));
}
