using ScNet.Design.Requirements;

namespace ScNet.Synthesis;

/// <summary>Of what a converter is to lose least, once it costs little.</summary>
/// <remarks>
/// Every converter that costs no more than <see cref="FurtherCost"/> above the least is made of the devices of the requirement, with the kinds, stacks, sizes
/// and frequencies that lose least over all points together, by the ordinary sizing; the one that loses least of all is the answer. Points: each
/// ratio at the lowest, the middle and the highest input voltage of its range (weights 1 : 2 : 1), each with every state of the load. Of the requirement count
/// process, areas, range of the frequency, output voltages and loads; its discharge curve, ripple and candidates do not. A converter that misses a point is out.
/// </remarks>
/// <param name="Requirement">What the converter is for and what it can be made of.</param>
public sealed record LossAim(Requirement Requirement)
{
    /// <summary>The largest <see cref="FurtherCost"/>.</summary>
    public const int MostFurtherCost = 100;

    /// <summary>How much more than the least a converter may cost, in the unit of <see cref="SynthesisRequest.Cost"/>: 0 for one of the cheapest.</summary>
    public int FurtherCost { get; init; }
}
