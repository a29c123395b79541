namespace ScNet.Derivations.Expressions;

/// <summary>What a <see cref="Symbol"/> stands for; the order is the order of symbols in an expression.</summary>
internal enum SymbolKind
{
    /// <summary>Ideal conversion ratio, no unit: M.</summary>
    Ratio,

    /// <summary>Slow-switching limit of the output impedance, in ohms (Ω): R_SSL.</summary>
    SlowSwitchingLimit,

    /// <summary>Impedance of charge sharing, what held currents leave of the slow-switching limit, in ohms (Ω): R_sharing.</summary>
    ChargeSharing,

    /// <summary>Fast-switching limit of the output impedance, in ohms (Ω): R_FSL.</summary>
    FastSwitchingLimit,

    /// <summary>Power lost in the slow-switching limit, in watts (W): P_SSL.</summary>
    SlowSwitchingLoss,

    /// <summary>Power lost in sharing charge where held currents carry their share steadily, in watts (W): P_sharing.</summary>
    ChargeSharingLoss,

    /// <summary>Power lost in the fast-switching limit, in watts (W): P_FSL.</summary>
    FastSwitchingLoss,

    /// <summary>A duty without a number, or the share of a numbered phase in the period: D, D1.</summary>
    Duty,

    /// <summary>Voltage of a capacitor or, in a phase, of a switch, first terminal minus second, in volts (V): v_fly1, v_s1[2].</summary>
    ElementVoltage,

    /// <summary>Potential of a node against the reference in a phase, in volts (V): φ_p1[1].</summary>
    NodePotential,

    /// <summary>Output voltage without load, in volts (V): V_out.</summary>
    OutputVoltage,

    /// <summary>Input voltage, in volts (V): V_in.</summary>
    InputVoltage,

    /// <summary>Load current, averaged over the period, in amperes (A): I_out.</summary>
    LoadCurrent,

    /// <summary>Charge into the first terminal of a capacitor or switch in a phase, per unit of charge into the load: a_fly1[1].</summary>
    ElementCharge,

    /// <summary>Charge into the load in a phase, per unit of charge of a period: A_out[1].</summary>
    OutputCharge,

    /// <summary>Charge out of the input source in a phase, per unit of charge into the load: A_in[1].</summary>
    InputCharge,

    /// <summary>Charge round a numbered loop, per unit of charge into the load: c_3.</summary>
    LoopCharge,

    /// <summary>On-resistance of a switch or winding resistance of an inductor, in ohms (Ω): R_s1; R where all are equal.</summary>
    OnResistance,

    /// <summary>Series resistance of a capacitor, in ohms (Ω): ESR_fly1; ESR where all are equal.</summary>
    SeriesResistance,

    /// <summary>Capacitance, in farads (F): C_fly1; C where all are equal.</summary>
    Capacitance,

    /// <summary>Average current of an inductor, from its first terminal to its second, in amperes (A): i_coil.</summary>
    InductorCurrent,

    /// <summary>Switching frequency, one period per cycle, in hertz (Hz): f.</summary>
    Frequency,
}
