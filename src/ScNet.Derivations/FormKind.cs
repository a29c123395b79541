namespace ScNet.Derivations;

/// <summary>Which quantity a stated closed form is of.</summary>
internal enum FormKind
{
    /// <summary>The output voltage without load, in volts (V).</summary>
    OutputVoltage,

    /// <summary>The slow-switching limit of the output impedance, in ohms (Ω).</summary>
    SlowSwitchingLimit,

    /// <summary>The fast-switching limit of the output impedance, in ohms (Ω).</summary>
    FastSwitchingLimit,

    /// <summary>The power lost in the slow-switching limit, in watts (W).</summary>
    SlowSwitchingLoss,

    /// <summary>The power lost in the fast-switching limit, in watts (W).</summary>
    FastSwitchingLoss,
}
