using ScNet.Reconfiguration;
using ScNet.Synthesis.Solving;

namespace ScNet.Synthesis;

/// <summary>
/// Lays given networks over one another with the least number of switches that there is, over all ways to map their
/// capacitors, in order and direction, and all sets of switches between terminals; proved by an exact solver.
/// </summary>
/// <remarks>
/// The same question as that of <see cref="OverlayHeuristic"/>, whose answer it begins with: what comes out never has more
/// switches, and <see cref="Overlay.IsProvedLeast"/> says whether the proof was found within the effort. Networks of more than
/// <see cref="MostCapacitors"/> capacitors are left to the heuristic. To choose the networks of the ratios as well, see
/// <see cref="SmallestConverter"/>.
/// </remarks>
/// <param name="largestEffort">The most work in deterministic units of the solver, roughly seconds of one core.</param>
public sealed class LeastOverlay(double largestEffort = 60) : IOverlayMethod
{
    /// <summary>The largest number of capacitors for which the least is looked for.</summary>
    public const int MostCapacitors = 5;

    private readonly double _largestEffort = double.IsFinite(largestEffort) && largestEffort > 0
        ? largestEffort
        : throw new ArgumentOutOfRangeException(nameof(largestEffort), largestEffort, "Expected a positive effort.");

    /// <inheritdoc/>
    public Overlay Lay(string name, IReadOnlyList<Converter> networks, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
    {
        Overlay found = OverlayHeuristic.Default.Lay(name, networks, progress, cancellationToken);
        if (networks.Max(n => n.Capacitors.Count) > MostCapacitors)
        {
            return found;
        }

        OverlayAnswer answer = OverlayModel.Fewer([.. networks.Select(OverlayGroups.Of)], found.SwitchCount, _largestEffort, cancellationToken);
        return new Overlay(answer.Plan?.ToConverter(name, networks) ?? found.Converter, found.SeparateSwitchCount) { IsProvedLeast = answer.IsProved };
    }
}
