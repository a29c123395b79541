namespace ScNet.Design.Losses;

/// <summary>What a loss comes from.</summary>
public enum LossKind
{
    /// <summary>Current through switches that are closed, and through series resistances of capacitors.</summary>
    Conduction,

    /// <summary>Charge that flows between capacitors at different voltages.</summary>
    ChargeSharing,

    /// <summary>Charging and discharging of gates.</summary>
    GateDrive,

    /// <summary>Charging and discharging of the junctions of switches.</summary>
    Junctions,

    /// <summary>Charging and discharging of the plates of capacitors against the substrate.</summary>
    Plates,

    /// <summary>Leakage of capacitors and of open switches.</summary>
    Leakage,

    /// <summary>Current through body diodes in dead time.</summary>
    BodyDiodes,

    /// <summary>Charge that body diodes have stored in dead time and give back as their switch blocks.</summary>
    ReverseRecovery,

    /// <summary>Current through the resistance of windings.</summary>
    Windings,

    /// <summary>Magnetisation of the cores of inductors.</summary>
    Cores,

    /// <summary>What the control draws.</summary>
    Control,

    /// <summary>Drop from a voltage to the one that is wanted, in a linear regulator.</summary>
    LinearDrop,
}
