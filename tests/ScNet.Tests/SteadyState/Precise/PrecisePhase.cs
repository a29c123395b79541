using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>
/// One phase as rows over (state, inputs): the rates of the states, the potential of every node, the current of every
/// inductor, and what flows out of every node through everything but capacitors.
/// </summary>
internal sealed record PrecisePhase(BigReal Duty, BigMatrix Rates, BigMatrix Potentials, BigMatrix Inductors, BigMatrix NodeCurrents);
