using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>A requirement for tests: a core at 0.8 V, asleep at 0.5 V, from a lithium-ion cell. Every value is invented.</summary>
internal static class CoreRequirement
{
    public static Process Process { get; } = new()
    {
        Name = "invented",
        Switches = [DemoDevices.NType1V2, DemoDevices.NType1V8],
        Capacitors = [DemoDevices.Dense1V2, DemoDevices.Plate3V6],
        Inductors = [new InductorDevice { Name = "coil", Source = "invented", Henries = 1e-6, Ohms = 0.1 }],
        MaximumSwitchesInSeries = 3,
        MaximumCapacitorsInSeries = 2,
        GateRailEfficiency = 0.8,
        Control = new ControlOverhead { FixedWatts = 2e-6, CoulombsPerCycle = 1e-13 },
    };

    public static Requirement Of(Process? process = null, IReadOnlyList<CandidateRequest>? candidates = null) => new()
    {
        Name = "core",
        InputVolts = new(2.8, 4.2),
        Discharge = [new(1, 4.2), new(0.8, 3.9), new(0.3, 3.6), new(0.1, 3.3), new(0, 2.8)],
        CellCoulombs = 720,
        SourceOhms = 0.1,
        OutputVolts = [0.5, 0.8],
        Loads = [new("sleep", 1e-5, 0.9, 0.5), new("active", 10e-3, 0.09, 0.8), new("burst", 50e-3, 0.01, 0.8)],
        RippleVolts = 0.05,
        OutputFarads = 1e-5,
        Process = process ?? Process,
        AreaSquareMetres = 1e-6,
        FrequencyHz = new(1e4, 100e6),
        Candidates = candidates ?? [],
    };
}
