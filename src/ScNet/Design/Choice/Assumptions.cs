using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Design.Choice;

/// <summary>The input assumptions that a choice rests on, each with what a factor on it makes of a requirement.</summary>
internal static class Assumptions
{
    private const double MostShare = 0.999;

    /// <summary>Those that count in a requirement.</summary>
    public static IReadOnlyList<Assumption> Of(Requirement requirement)
    {
        Process process = requirement.Process;
        ControlOverhead control = process.Control;
        return
        [
            .. process.Capacitors.Any(c => c.BottomPlateFraction + c.TopPlateFraction > 0)
                ? [Capacitors("plate fraction", (c, k) => c with { BottomPlateFraction = c.BottomPlateFraction * k, TopPlateFraction = c.TopPlateFraction * k })]
                : None,
            Capacitors("capacitor density", (c, k) => c with
            {
                FaradsPerSquareMetre = c.FaradsPerSquareMetre * k,
                DensityAgainstBias = [.. c.DensityAgainstBias.Select(d => d with { FaradsPerSquareMetre = d.FaradsPerSquareMetre * k })],
            }),
            Switches("on-resistance", (s, k) => s with { OnResistanceOhmMicrometres = s.OnResistanceOhmMicrometres * k }),
            Switches("gate charge", (s, k) => s with { GateChargeCoulombsPerMicrometre = s.GateChargeCoulombsPerMicrometre * k }),
            Switches("junction charge", (s, k) => s with { JunctionChargeCoulombsPerMicrometre = s.JunctionChargeCoulombsPerMicrometre * k }),
            .. process.Inductors.Any(l => l.Ohms > 0)
                ? [In("winding resistance", (p, k) => p with { Inductors = [.. p.Inductors.Select(l => l with { Ohms = l.Ohms * k })] })]
                : None,
            .. process.Inductors.Count > 0
                ? [In("inductance", (p, k) => p with { Inductors = [.. p.Inductors.Select(l => l with { Henries = l.Henries * k })] })]
                : None,
            .. control.FixedWatts > 0
                ? [In("fixed control power", (p, k) => p with { Control = control with { FixedWatts = control.FixedWatts * k } })]
                : None,
            .. control.CoulombsPerCycle > 0
                ? [In("control charge per cycle", (p, k) => p with { Control = control with { CoulombsPerCycle = control.CoulombsPerCycle * k } })]
                : None,
            new("area", k => requirement with
            {
                AreaSquareMetres = requirement.AreaSquareMetres * k,
                CapacitorAreaSquareMetres = requirement.CapacitorAreaSquareMetres * k,
                SwitchAreaSquareMetres = requirement.SwitchAreaSquareMetres * k,
            }),
            new("load current", k => requirement with { Loads = [.. requirement.Loads.Select(l => l with { Amperes = l.Amperes * k })] }),
            .. requirement.Loads.Count > 1
                ? requirement.Loads.Select((l, i) => new Assumption($"time in {l.Name}", k => requirement with { Loads = Shared(requirement.Loads, i, k) }))
                : None,
        ];

        Assumption In(string name, Func<Process, double, Process> change) => new(name, k => requirement with { Process = change(process, k) });

        Assumption Capacitors(string name, Func<CapacitorDevice, double, CapacitorDevice> change) =>
            In(name, (p, k) => p with { Capacitors = [.. p.Capacitors.Select(c => change(c, k))] });

        Assumption Switches(string name, Func<SwitchDevice, double, SwitchDevice> change) =>
            In(name, (p, k) => p with { Switches = [.. p.Switches.Select(s => change(s, k))] });
    }

    private static Assumption[] None => [];

    // the others share what is left of the time in the proportions that they have
    private static LoadShare[] Shared(IReadOnlyList<LoadShare> loads, int state, double factor)
    {
        double own = Math.Min(loads[state].Share * factor, MostShare), rest = (1 - own) / (1 - loads[state].Share);
        return [.. loads.Select((l, i) => l with { Share = i == state ? own : l.Share * rest })];
    }
}

/// <summary>An input assumption.</summary>
/// <param name="Name">The name, in words.</param>
/// <param name="With">The requirement with a factor on it.</param>
internal sealed record Assumption(string Name, Func<double, Requirement> With);
