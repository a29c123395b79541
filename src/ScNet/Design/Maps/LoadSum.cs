using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;

namespace ScNet.Design.Maps;

/// <summary>Adds up what one load gets and what is lost for it, per coulomb of the full cell.</summary>
internal sealed class LoadSum(LoadShare load)
{
    public LoadShare Load => load;

    public double Seconds { get; private set; }

    public double OutputJoules { get; private set; }

    public double[] LossJoules { get; } = new double[LossModel.KindCount];

    public void Add(double seconds, in RegulatedPoint point)
    {
        Seconds += seconds;
        OutputJoules += seconds * point.OutputWatts;
        for (int kind = 0; kind < LossJoules.Length; kind++)
        {
            LossJoules[kind] += seconds * point.LossOf((LossKind)kind);
        }
    }

    /// <summary>The average power of loads of one name, in the order of their names.</summary>
    public static IEnumerable<LoadBudget> Budgets(IEnumerable<LoadSum> sums) => sums.Where(s => s.Seconds > 0).GroupBy(s => s.Load.Name, StringComparer.Ordinal).Select(alike =>
    {
        double seconds = alike.Sum(s => s.Seconds);
        return new LoadBudget(
            alike.First().Load with { Share = alike.Sum(s => s.Load.Share) },
            alike.Sum(s => s.OutputJoules) / seconds,
            [.. Enumerable.Range(0, LossModel.KindCount).Select(kind => alike.Sum(s => s.LossJoules[kind]) / seconds)]);
    });
}
