using ScNet.Reconfiguration;

namespace ScNet.Synthesis.Solving;

/// <summary>What the solver says of networks to be laid over one another.</summary>
/// <param name="Plan">A plan with fewer switches than were known to do; null where there is none or none was found.</param>
/// <param name="IsProved">Whether the plan, or what was known where there is none, has the least.</param>
internal sealed record OverlayAnswer(OverlayPlan? Plan, bool IsProved);
