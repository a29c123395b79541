namespace ScNet.Derivations;

/// <summary>What a statement of a derivation is about. Charges are per unit of output charge, voltages per volt of input.</summary>
internal enum StatementKind
{
    /// <summary>The ideal conversion ratio.</summary>
    Ratio,

    /// <summary>Charge that leaves the input source in a phase.</summary>
    InputCharge,

    /// <summary>Charge that enters the load in a phase.</summary>
    OutputCharge,

    /// <summary>Charge that enters a capacitor's first terminal in a phase.</summary>
    CapacitorCharge,

    /// <summary>Charge that flows through a switch from its first terminal to its second in a phase.</summary>
    SwitchCharge,

    /// <summary>The voltage of a capacitor, positive plate minus bottom plate.</summary>
    CapacitorVoltage,

    /// <summary>The voltage across a switch in a phase, first terminal minus second.</summary>
    BlockingVoltage,

    /// <summary>The blocking voltage of the largest magnitude of a switch.</summary>
    PeakBlockingVoltage,

    /// <summary>The coefficient of a capacitor in the slow-switching limit, Σ a² / 2 over the phases.</summary>
    SlowCoefficient,

    /// <summary>The coefficient of a switch or of a capacitor's series resistance in the fast-switching limit, Σ a² / D over the phases.</summary>
    FastCoefficient,
}
