using ScNet.Design.Losses;
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

    public double[] LossJoules { get; } = new double[LossModel.KindCount];

    public LifeEnd? End { get; private set; }

    public void Discharge(IEnumerable<DischargeSlice> slices)
    {
        var serving = new Served[loads.Count];
        foreach (DischargeSlice slice in slices)
        {
            double amperes = 0;
            for (int l = 0; l < loads.Count; l++)
            {
                if (Best(slice.OpenVolts, loads[l]) is not { } best)
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

    private void Add(DischargeSlice slice, double seconds, ReadOnlySpan<Served> serving)
    {
        Seconds += seconds;
        HeldShare += slice.Share;
        for (int l = 0; l < serving.Length; l++)
        {
            double own = seconds * loads[l].Share / _sharesSum;
            ref readonly Served served = ref serving[l];
            OutputJoules += own * served.Point.OutputWatts;
            InputJoules += own * served.Point.InputWatts;
            SourceJoules += own * sourceOhms * served.CellAmperes * served.CellAmperes;
            LosslessCoulombs += own * served.Point.OutputWatts / slice.OpenVolts;
            SkippingSeconds += served.Point.Outcome == RegulationOutcome.HeldBySkipping ? own : 0;
            ModeSeconds[served.Mode] += own;
            for (int kind = 0; kind < LossJoules.Length; kind++)
            {
                LossJoules[kind] += own * served.Point.LossOf((LossKind)kind);
            }
        }
    }

    private Served? Best(double openVolts, LoadShare load)
    {
        Served? best = null;
        for (int m = 0; m < modes.Count; m++)
        {
            if (SourceLoad.Hold(modes[m], openVolts, sourceOhms, load.OutputVolts!.Value, load.Amperes) is { } point
                && point.CellAmperes is var amperes && !(amperes >= best?.CellAmperes))
            {
                best = new(m, point.Point, amperes);
            }
        }

        return best;
    }

    private readonly record struct Served(int Mode, RegulatedPoint Point, double CellAmperes);
}
