using Fractions;
using ScNet.Analysis;

namespace ScNet.Stress;

/// <summary>
/// The voltages of a mode with each of its idle capacitors at one end of the interval that other modes
/// leave it with, and the bounds of all potentials that follow.
/// </summary>
/// <remarks>
/// Every bound is convex (a lower one concave) in the voltages of idle capacitors, so the hull over all
/// choices of ends holds for everything between them: docs/theory/stress.md, "Idle capacitors". Cost: 2ᵏ
/// times that of the mode for k idle capacitors whose interval is no single value.
/// </remarks>
internal sealed class HeldCorner
{
    /// <summary>The most idle capacitors whose interval is no single value; with more of them none is bounded.</summary>
    public const int MaximumOpenCount = 6;

    private HeldCorner(ModeAnalysis analysis, HeldVoltages held, bool openSwitchesLeak)
    {
        Held = held;
        Pieces = RigidPieces.Of(analysis.Converter, held);
        Spans = NodeSpans.Of(analysis, Pieces, held, openSwitchesLeak);
    }

    public HeldVoltages Held { get; }

    public RigidPieces Pieces { get; }

    public NodeSpans Spans { get; }

    /// <summary>The mode with its idle capacitors unknown.</summary>
    public static HeldCorner Plain(ModeAnalysis analysis, bool openSwitchesLeak) =>
        new(analysis, HeldVoltages.Of(analysis), openSwitchesLeak);

    /// <summary>All corners; the plain one alone where no idle capacitor is bounded.</summary>
    /// <param name="plain">The mode with its idle capacitors unknown.</param>
    /// <param name="analysis">The mode's analysis.</param>
    /// <param name="kept">What other modes leave each capacitor with.</param>
    /// <param name="openSwitchesLeak">Whether open switches at a floating node may leak.</param>
    public static IReadOnlyList<HeldCorner> Of(
        HeldCorner plain, ModeAnalysis analysis, IReadOnlyList<Interval<Fraction>> kept, bool openSwitchesLeak)
    {
        int[] idle = [.. Enumerable.Range(0, kept.Count).Where(c => plain.Held[c] is null && kept[c].IsDetermined && !analysis.LeftToLosses.Contains(c))];
        int[] open = [.. idle.Where(c => !kept[c].IsPoint)];
        if (idle.Length == 0 || open.Length > MaximumOpenCount)
        {
            return [plain];
        }

        HeldCorner[] corners = [.. Enumerable.Range(0, 1 << open.Length).Select(choice => new HeldCorner(
            analysis,
            plain.Held.With(idle.Select(c => (c, Array.IndexOf(open, c) is var k and >= 0 && (choice >> k & 1) == 1 ? kept[c].Maximum!.Value : kept[c].Minimum!.Value))),
            openSwitchesLeak))];

        // idle ones that the mode puts in a loop with each other share their charge and keep nothing
        return corners.Any(c => c.Spans.HasConflict) ? [plain] : corners;
    }
}
