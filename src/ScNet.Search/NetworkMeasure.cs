namespace ScNet.Search;

/// <summary>A measure by which searched networks are compared, each the less the better; its meaning stands at the property of <see cref="NetworkMeasures"/>.</summary>
public enum NetworkMeasure
{
    /// <summary>The charge–voltage product of the capacitors.</summary>
    CapacitorChargeVoltage,

    /// <summary>The charge–voltage product of the switches.</summary>
    SwitchChargeVoltage,

    /// <summary>The number of switches.</summary>
    SwitchCount,

    /// <summary>The highest capacitor voltage.</summary>
    HighestCapacitorVoltage,

    /// <summary>The highest blocking voltage of a switch.</summary>
    HighestSwitchVoltage,

    /// <summary>The swing of the plates.</summary>
    PlateSwing,

    /// <summary>The charge of the capacitors, and with it the slow limit at a total capacitance.</summary>
    CapacitorCharge,

    /// <summary>The charge of the switches, and with it the fast limit at a total conductance.</summary>
    SwitchCharge,
}
