using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>A requirement of one input voltage, one output at 1 V and one load, of one kind of switch and one of capacitor without bottom plates. Every value is invented.</summary>
internal static class OnePointRequirement
{
    public static Requirement Of(double inputVolts, double amperes, int switchesInSeries = Process.DefaultSwitchesInSeries) => new()
    {
        Name = "one point",
        InputVolts = new(inputVolts, inputVolts),
        OutputVolts = [1.0],
        Loads = [new("on", amperes, 1)],
        Process = new Process
        {
            Name = "invented",
            Switches = [DemoDevices.NType1V8],
            Capacitors = [DemoDevices.Plate3V6 with { BottomPlateFraction = 0 }],
            MaximumSwitchesInSeries = switchesInSeries,
        },
        AreaSquareMetres = 1e-6,
        FrequencyHz = new(1e4, 1e8),
    };
}
