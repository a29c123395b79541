using ScNet.Numerics;

namespace ScNet.SteadyState.Conduction;

/// <summary>A solved period and when its events come.</summary>
internal sealed class ConductionSolution
{
    private ConductionSolution(ConductionPeriod period, double[] phaseSeconds, double[] conducting)
    {
        Period = period;
        PhaseSeconds = phaseSeconds;
        ConductingSeconds = conducting;
    }

    public ConductionPeriod Period { get; }

    public double[] PhaseSeconds { get; }

    /// <summary>How long each phase lasts up to its event, or whole.</summary>
    public double[] ConductingSeconds { get; }

    public static ConductionSolution? TryOf(
        ConductionNetwork network, double[] phaseSeconds, int[] events, double[] shares, double inputVolts, double loadAmperes)
    {
        double[] conducting = [.. phaseSeconds];
        for (int k = 0; k < events.Length; k++)
        {
            conducting[events[k]] *= shares[k];
        }

        var seconds = new DoubleDouble[network.Stretches.Length];
        DoubleDouble sum = default;
        for (int k = 0; k < seconds.Length; k++)
        {
            int phase = network.Stretches[k].Phase;
            DoubleDouble own = DoubleDouble.Of(conducting[phase]);
            seconds[k] = network.Stretches[k].IsAfterEvent ? DoubleDouble.Of(phaseSeconds[phase]) - own : own;
            sum += seconds[k];
        }

        return ConductionPeriod.TryOf(network, seconds, sum, inputVolts, loadAmperes) is { } period ? new(period, phaseSeconds, conducting) : null;
    }
}
