using ScNet.Kernel;

namespace ScNet;

/// <summary>A parasitic capacitance of whatever origin, by node numbers.</summary>
/// <param name="Nodes">Its nodes.</param>
/// <param name="Farads">Its capacitance in farads (F).</param>
internal readonly record struct ParasiticCapacitance(NodePair Nodes, double Farads);
