using ScNet.Design.Regulation;
using ScNet.Design.Requirements;

namespace ScNet.Design.Maps;

/// <summary>Adds up what a discharge gives, per coulomb of the full cell.</summary>
/// <remarks>Equations: docs/theory/maps.md.</remarks>
internal sealed class LifeSum(IReadOnlyList<RegulatedMode> modes, IReadOnlyList<LoadShare> loads, double sourceOhms)
{
    private readonly double _sharesSum = loads.Sum(l => Guard.InRange(l.Share, allowZero: false, nameof(loads)));

    public double Seconds { get; private set; }

    public double HeldShare { get; private set; }

    public double OutputJoules { get; private set; }

    public double InputJoules { get; private set; }

    public double SourceJoules { get; private set; }

    public double LosslessCoulombs { get; private set; }

    public double SkippingSeconds { get; private set; }

    public double[] ModeSeconds { get; } = new double[modes.Count];

    /// <summary>What each load draws and loses, in their order.</summary>
    public LoadSum[] Loads { get; } = [.. loads.Select(l => new LoadSum(l))];

    public LifeEnd? End { get; private set; }

    public void Discharge(IEnumerable<DischargeSlice> slices)
    {
        var serving = new BestMode[loads.Count];
        foreach (DischargeSlice slice in slices)
        {
            double amperes = 0;
            for (int l = 0; l < loads.Count; l++)
            {
                if (BestMode.Of(modes, slice.OpenVolts, sourceOhms, loads[l].OutputVolts!.Value, loads[l].Amperes) is not { } best)
                {
                    End = LifeEnd.Of(slice, loads[l], modes);
                    return;
                }

                serving[l] = best;
                amperes += loads[l].Share / _sharesSum * best.CellAmperes;
            }

            Add(slice, slice.Share / amperes, serving);
        }
    }

    private void Add(DischargeSlice slice, double seconds, ReadOnlySpan<BestMode> serving)
    {
        Seconds += seconds;
        HeldShare += slice.Share;
        for (int l = 0; l < serving.Length; l++)
        {
            double own = seconds * loads[l].Share / _sharesSum;
            ref readonly BestMode served = ref serving[l];
            OutputJoules += own * served.Point.OutputWatts;
            InputJoules += own * served.Point.InputWatts;
            SourceJoules += own * sourceOhms * served.CellAmperes * served.CellAmperes;
            LosslessCoulombs += own * served.Point.OutputWatts / slice.OpenVolts;
            SkippingSeconds += served.Point.Outcome == RegulationOutcome.HeldBySkipping ? own : 0;
            ModeSeconds[served.Mode] += own;
            Loads[l].Add(own, served.Point);
        }
    }
}
