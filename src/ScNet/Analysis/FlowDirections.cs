using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>The directions in which charge can circulate in a mode: all three kinds of docs/theory/value-decided-flow.md.</summary>
internal static class FlowDirections
{
    /// <summary>Finds the directions.</summary>
    /// <param name="network">The network.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="forests">Its phases.</param>
    /// <param name="loops">Their loops.</param>
    /// <param name="solution">The eliminated equations of the loops.</param>
    /// <param name="tracer">Follows the charges of loops.</param>
    /// <param name="withInput">Whether directions count that take charge from the input; see <see cref="FullTopology"/>. Paths, which the limits read, are then left out.</param>
    public static List<FlowDirection> Of<T>(
        SwitchedNetwork network, Mode mode, PhaseForest[] forests, LoopSet loops, LoopSolution<T> solution, FlowTracer<T> tracer, bool withInput = false)
        where T : struct, IBinaryInteger<T>
    {
        List<FlowDirection> directions =
        [
            .. solution.SparseCirculations(withInput).Select(c => c.Path is null || withInput
                ? tracer.Trace(loops, c.Circulation)
                : tracer.Trace(loops, c.Circulation) with { Path = tracer.Trace(loops, c.Path), PathShare = c.PathShare.ToDouble() }),
        ];
        for (int phase = 0; phase < forests.Length; phase++)
        {
            if (forests[phase].HasSwitchLoop)
            {
                directions.AddRange(FlowDirection.SwitchLoops(network, forests[phase], network.Closed[mode.Index], phase));
            }
        }

        // All repeats: a capacitor without net charge drives transients through the same switches
        // (docs/theory/value-decided-flow.md). Between sources and no switch nothing ever moves.
        for (int pair = 0; loops.Repeats is { } repeats && pair < repeats.Count; pair += 2)
        {
            FlowDirection direction = tracer.Trace(repeats, [(pair, Rational<T>.One), (pair + 1, -Rational<T>.One)]);
            if (!direction.Switches.IsZero)
            {
                directions.Add(direction);
            }
        }

        return directions;
    }

    /// <summary>The directions with what is still when slow marked.</summary>
    /// <remarks>
    /// Without a chain of capacitors to a flow that delivers nothing drives a direction between equilibria; and where closed
    /// switches tie the output to the input no capacitor's voltage ever changes.
    /// </remarks>
    /// <param name="network">The network.</param>
    /// <param name="own">The flow that delivers.</param>
    /// <param name="directions">The directions.</param>
    /// <param name="isTied">Whether closed switches tie the output to the input.</param>
    public static List<FlowDirection> WhenSlow(SwitchedNetwork network, FlowDirection own, List<FlowDirection> directions, bool isTied)
    {
        int load = network.CapacitorCount;
        DisjointSets parts = new(network.CapacitorCount + 1);
        Join(own, isDelivering: true);
        directions.ForEach(d => Join(d.Way, d.Path is not null));
        return directions.ConvertAll(d => d with
        {
            IsStillWhenSlow = isTied || d.Way.Branches.IsZero || parts.Find(CapacitorOf(d.Way.Branches.Indices[0])) != parts.Find(load),
        });

        void Join(FlowDirection way, bool isDelivering)
        {
            foreach (int index in way.Branches.Indices)
            {
                int capacitor = CapacitorOf(index);
                if (capacitor < load)
                {
                    parts.Join(capacitor, isDelivering ? load : CapacitorOf(way.Branches.Indices[0]));
                }
            }
        }

        int CapacitorOf(int index) => Math.Min(index / network.PhaseCount, load);
    }
}
