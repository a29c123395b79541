namespace ScNet.Stress;

/// <summary>
/// What is taken to happen to a node that floats in a phase: no closed switch and no capacitor of known
/// voltage ties it to the reference.
/// </summary>
/// <remarks>Which bound follows from which assumption: docs/theory/stress.md, "Floating nodes".</remarks>
public enum FloatingAssumption
{
    /// <summary>
    /// It starts from the potential that its parasitic capacitances hold, and open switches at it may
    /// leak: it lies anywhere between its potentials of the phase before and those at the other ends of its
    /// open switches.
    /// </summary>
    HeldOrLeaking,

    /// <summary>Open switches do not leak: it lies between its potentials of the phase before.</summary>
    Held,
}
