using ScNet.Design.Losses;

namespace ScNet.Reporting.Charts;

/// <summary>The losses of one converter, point or state of the load, by kind: a row of a <see cref="LossChart"/>.</summary>
internal sealed record LossRow(string Name, double OutputWatts, IReadOnlyList<double> Watts)
{
    /// <summary>The kinds of losses, by their number.</summary>
    public static IReadOnlyList<LossKind> Kinds { get; } = [.. Enum.GetValues<LossKind>()];

    public double LossWatts => Watts.Sum();

    /// <summary>All losses per input power.</summary>
    public double LossShare => LossWatts / (OutputWatts + LossWatts);

    /// <summary>The loss of a kind per input power.</summary>
    public double ShareOf(LossKind kind) => Watts[(int)kind] / (OutputWatts + LossWatts);
}
