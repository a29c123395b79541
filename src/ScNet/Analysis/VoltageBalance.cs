namespace ScNet.Analysis;

/// <summary>What fixed the last of the capacitor voltages of a mode: laws on averages come first, then finer ones.</summary>
/// <remarks>Equations: docs/theory/averages-with-inductors.md.</remarks>
public enum VoltageBalance
{
    /// <summary>Kirchhoff's voltage law round the loops, and the volt-seconds of the inductors.</summary>
    Averages,

    /// <summary>
    /// The charge that the ripple of the inductors' currents brings, taken as straight lines in each phase, without load.
    /// </summary>
    Ripple,

    /// <summary>Nothing that is exact: resistances decide, and only the periodic solution at a frequency tells the voltages.</summary>
    Losses,

    /// <summary>A controller outside the netlist (<see cref="Capacitor.Controlled"/>) holds a voltage that nothing else fixes, or fixes otherwise.</summary>
    Control,
}
