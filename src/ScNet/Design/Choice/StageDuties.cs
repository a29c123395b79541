using System.Collections.Concurrent;
using Fractions;
using ScNet.Analysis;

namespace ScNet.Design.Choice;

/// <summary>The duties of a stage at which it is worked out, and the ratio between them.</summary>
/// <remarks>
/// The nodes are the multiples of 1/240 of the range, so that the duties at which the phases of a stage of up to six levels change their
/// order are among them. Between two nodes every quantity is taken as a straight line; its error is an eighth of its
/// second derivative over the square of the nodes.
/// </remarks>
internal sealed class StageDuties
{
    /// <summary>The number of equal parts of the range.</summary>
    public const int Parts = 240;

    private readonly Candidate _candidate;
    private readonly double? _ratioPerNode;
    private static readonly int[] s_probes = [35, 97, 201];

    private readonly ConcurrentDictionary<int, Lazy<ModeAnalysis>> _analyses = new();

    public StageDuties(Candidate candidate)
    {
        _candidate = candidate;
        Fraction[] slopes = [.. s_probes.Where(n => AnalysisAt(n).Ratio.IsExact).Select(n => AnalysisAt(n).Ratio.ToFraction() / n)];
        _ratioPerNode = slopes.Length == 3 && slopes.All(s => s == slopes[0]) ? slopes[0].ToDouble() : null;
    }

    /// <summary>The duty at a node.</summary>
    public Fraction DutyAt(int node) => _candidate.MaximumDuty * new Fraction(node, Parts);

    /// <summary>The analysis at a node, from 1.</summary>
    public ModeAnalysis AnalysisAt(int node) => _analyses.GetOrAdd(node, n => new Lazy<ModeAnalysis>(() => ModeAnalysis.Of(_candidate.AtDuty(DutyAt(n))))).Value;

    /// <summary>The ideal ratio at a node.</summary>
    public double RatioAt(int node) => _ratioPerNode is { } slope ? slope * node : AnalysisAt(node).Ratio.ToDouble();

    /// <summary>The node below the duty of a ratio, and how far on to the next one it lies, from 0 to 1; null where no duty gives it.</summary>
    /// <remarks>The ratio rises with the duty in every stage that there is.</remarks>
    public (int Node, double Share)? Of(double ratio)
    {
        int low = 1, high = Parts - 1;
        if (RatioAt(low) > ratio || RatioAt(high) < ratio)
        {
            return null;
        }

        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = RatioAt(middle) <= ratio ? (middle, high) : (low, middle);
        }

        return (low, Math.Clamp((ratio - RatioAt(low)) / (RatioAt(high) - RatioAt(low)), 0, 1));
    }
}
