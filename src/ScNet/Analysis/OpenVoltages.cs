using System.Numerics;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>Settles the voltages of a mode that averages leave open: by ripple, by controllers, or not at all.</summary>
/// <remarks>Equations: docs/theory/averages-with-inductors.md.</remarks>
internal sealed class OpenVoltages<T> : IOpenVoltages
    where T : struct, IBinaryInteger<T>
{
    private readonly SwitchedNetwork _network;
    private readonly PhaseForest[] _forests;
    private readonly LoopSet _loops;
    private readonly VoltageSpace<T> _space;
    private readonly bool[] _unconnected;
    private readonly IReadOnlyList<(int Capacitor, Fraction Voltage)> _controlled;

    public OpenVoltages(
        SwitchedNetwork network, PhaseForest[] forests, LoopSet loops, VoltageSpace<T> space, bool[] unconnected, IReadOnlyList<(int Capacitor, Fraction Voltage)> controlled)
    {
        (_network, _forests, _loops, _space, _unconnected, _controlled) = (network, forests, loops, space, unconnected, controlled);
    }

    public bool IsFreeOfValues => _network.InductorCount == 0 || (_space.Movements.Count == 0 && !_loops.HasMeshes);

    public SettledVoltages Settle(Converter converter)
    {
        try
        {
            return new VoltageSettlement<T>(converter, _forests, _loops, _unconnected, _controlled).Of(_space);
        }
        catch (OverflowException) when (typeof(T) != typeof(BigInteger))
        {
            return new VoltageSettlement<BigInteger>(converter, _forests, _loops, _unconnected, _controlled).Of(_space.Widened());
        }
    }
}
