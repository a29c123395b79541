namespace ScNet.Kernel;

/// <summary>A branch through which a network meets the outside.</summary>
/// <param name="Nodes">Its nodes.</param>
/// <param name="IsGiven">
/// Whether the outside gives the voltage, the average one where the current is held; otherwise it follows from
/// the network, and the charge through the branch is given.
/// </param>
/// <param name="IsCurrentHeld">
/// Whether its current is held through the whole period, so that its charges in the phases are in the proportion
/// of the duties and it closes no loop of held voltages.
/// </param>
internal readonly record struct NetworkPort(NodePair Nodes, bool IsGiven, bool IsCurrentHeld = false);
