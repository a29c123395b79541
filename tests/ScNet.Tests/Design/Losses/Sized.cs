using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Tests.Design.Losses;

/// <summary>Converters made of invented devices.</summary>
internal static class Sized
{
    /// <summary>A switch with a charge of 2 fC/µm at the gate and 1 fC/µm at the junction, which leaks 1 nA/µm.</summary>
    public static SwitchDevice Switch { get; } = new()
    {
        Name = "n",
        Source = "invented",
        RatedVolts = 2,
        GateDriveVolts = 1.5,
        GateRatedVolts = 2,
        OnResistanceOhmMicrometres = 1000,
        GateChargeCoulombsPerMicrometre = 2e-15,
        JunctionChargeCoulombsPerMicrometre = 1e-15,
        AreaSquareMetresPerMicrometre = 1e-12,
        LeakageAmperesPerMicrometre = 1e-9,
    };

    /// <summary>A capacitor of 10 nF/mm² whose bottom plate has a fortieth, its top plate a two hundredth of it.</summary>
    public static CapacitorDevice Capacitor { get; } = new()
    {
        Name = "c",
        Source = "invented",
        RatedVolts = 2,
        FaradsPerSquareMetre = 1e-2,
        BottomPlateFraction = 0.025,
        TopPlateFraction = 0.005,
        LeakageAmperesPerSquareMetre = 1e-2,
    };

    /// <summary>A switch that costs nothing but its resistance.</summary>
    public static SwitchDevice BareSwitch { get; } = new()
    {
        Name = "bare n",
        Source = "invented",
        RatedVolts = 2,
        GateDriveVolts = 1.5,
        GateRatedVolts = 2,
        OnResistanceOhmMicrometres = 1000,
        GateChargeCoulombsPerMicrometre = 1e-60,
        JunctionChargeCoulombsPerMicrometre = 1e-60,
        AreaSquareMetresPerMicrometre = 1e-12,
    };

    /// <summary>A capacitor without plates and leakage.</summary>
    public static CapacitorDevice BareCapacitor { get; } = new() { Name = "bare c", Source = "invented", RatedVolts = 2, FaradsPerSquareMetre = 1e-2 };

    /// <summary>Every element of one kind each.</summary>
    public static SizedConverter Of(
        Converter converter, SwitchDevice? @switch = null, CapacitorDevice? capacitor = null, ControlOverhead? control = null, double railEfficiency = 1, int inSeries = 1,
        double deadSeconds = 0)
    {
        (@switch, capacitor) = (@switch ?? Switch, capacitor ?? Capacitor);
        Process process = new()
        {
            Name = "invented",
            Switches = [@switch],
            Capacitors = [capacitor],
            Control = control ?? ControlOverhead.None,
            GateRailEfficiency = railEfficiency,
            DeadTimeSeconds = deadSeconds,
        };
        return new SizedConverter(
            converter,
            [.. converter.Switches.Select(s => new StackedSwitch(@switch, inSeries, s.Ohms))],
            [.. converter.Capacitors.Select(c => new StackedCapacitor(capacitor, inSeries, c.Farads))],
            [.. converter.Inductors.Select(l => new InductorDevice { Name = l.Name, Source = "invented", Henries = l.Henries, Ohms = l.Ohms })],
            process);
    }

    /// <summary>Every element without anything but resistance and capacitance.</summary>
    public static SizedConverter Bare(Converter converter) => Of(converter, BareSwitch, BareCapacitor);
}
