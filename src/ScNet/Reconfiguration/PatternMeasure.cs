namespace ScNet.Reconfiguration;

/// <summary>What the choice among patterns goes by: the closed switches of both phases, a bit per switch, and what they amount to.</summary>
/// <param name="First">The switches closed in phase 1.</param>
/// <param name="Second">The switches closed in phase 2.</param>
/// <param name="SlowOhmsAtOneHertz">The slow-switching limit in ohms (Ω) at 1 Hz.</param>
/// <param name="FastOhms">The fast-switching limit in ohms (Ω).</param>
/// <param name="UndeterminedSwitchCount">How many switches see a floating node.</param>
/// <param name="PeakBlocking">The magnitude of the highest determined blocking voltage per volt of input; zero where none is determined.</param>
internal readonly record struct PatternMeasure(
    int First, int Second, double SlowOhmsAtOneHertz, double FastOhms, int UndeterminedSwitchCount, double PeakBlocking)
{
    /// <summary>How often a switch is closed, counted over switches and phases.</summary>
    public int ClosingCount => int.PopCount(First) + int.PopCount(Second);
}
