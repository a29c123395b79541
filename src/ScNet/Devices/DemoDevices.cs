namespace ScNet.Devices;

/// <summary>
/// Devices for examples and tests. Every value is invented; none is of a real process, and nothing should
/// be built from them.
/// </summary>
public static class DemoDevices
{
    private const string Invented = "invented";

    /// <summary>A thin-gate n-type device for 1.2 V.</summary>
    public static SwitchDevice NType1V2 { get; } = new()
    {
        Name = "demo n 1.2 V",
        Source = Invented,
        Polarity = DevicePolarity.NType,
        RatedVolts = 1.2,
        GateDriveVolts = 1.0,
        GateRatedVolts = 1.3,
        OnResistanceOhmMicrometres = 600,
        GateChargeCoulombsPerMicrometre = 1.2e-15,
        JunctionChargeCoulombsPerMicrometre = 0.8e-15,
        AreaSquareMetresPerMicrometre = 0.4e-12,
    };

    /// <summary>An n-type device for 1.8 V.</summary>
    public static SwitchDevice NType1V8 { get; } = new()
    {
        Name = "demo n 1.8 V",
        Source = Invented,
        Polarity = DevicePolarity.NType,
        RatedVolts = 1.8,
        GateDriveVolts = 1.5,
        GateRatedVolts = 1.98,
        OnResistanceOhmMicrometres = 1000,
        GateChargeCoulombsPerMicrometre = 2.2e-15,
        JunctionChargeCoulombsPerMicrometre = 1.5e-15,
        AreaSquareMetresPerMicrometre = 0.7e-12,
    };

    /// <summary>A p-type device for 1.8 V.</summary>
    public static SwitchDevice PType1V8 { get; } = new()
    {
        Name = "demo p 1.8 V",
        Source = Invented,
        Polarity = DevicePolarity.PType,
        RatedVolts = 1.8,
        GateDriveVolts = 1.8,
        GateRatedVolts = 1.98,
        OnResistanceOhmMicrometres = 2200,
        GateChargeCoulombsPerMicrometre = 2.2e-15,
        JunctionChargeCoulombsPerMicrometre = 1.6e-15,
        AreaSquareMetresPerMicrometre = 0.7e-12,
    };

    /// <summary>A dense capacitor for 1.2 V.</summary>
    public static CapacitorDevice Dense1V2 { get; } = new()
    {
        Name = "demo dense 1.2 V",
        Source = Invented,
        RatedVolts = 1.2,
        FaradsPerSquareMetre = 10e-3,
        BottomPlateFraction = 0.05,
        EsrOhmSquareMetres = 2e-10,
        LeakageAmperesPerSquareMetre = 1e-2,
    };

    /// <summary>A plate capacitor for 3.6 V.</summary>
    public static CapacitorDevice Plate3V6 { get; } = new()
    {
        Name = "demo plate 3.6 V",
        Source = Invented,
        RatedVolts = 3.6,
        FaradsPerSquareMetre = 2e-3,
        BottomPlateFraction = 0.02,
        EsrOhmSquareMetres = 5e-10,
        LeakageAmperesPerSquareMetre = 1e-4,
    };
}
