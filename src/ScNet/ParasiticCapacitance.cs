using ScNet.Kernel;

namespace ScNet;

/// <summary>A parasitic capacitance of whatever origin, by node numbers.</summary>
/// <param name="Nodes">Its nodes.</param>
/// <param name="Farads">Its capacitance in farads (F).</param>
internal readonly record struct ParasiticCapacitance(NodePair Nodes, double Farads)
{
    /// <summary>The capacitances in the order of <see cref="Converter.ParasiticCapacitances"/>.</summary>
    public static IEnumerable<double> FaradsOf(IEnumerable<Capacitor> capacitors, IEnumerable<Parasitic> parasitics) =>
        capacitors.SelectMany(c => c.Plates.From(c)).Select(p => p.Farads).Concat(parasitics.Select(p => p.Farads));
}
