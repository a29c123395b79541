using Fractions;

namespace ScNet.Tests.SteadyState;

/// <summary>Two capacitors in series on the output, then one by one across it, with plates and strays that also touch the input: its voltage and current ratio differ.</summary>
internal static class PlatedThreePhases
{
    public static Fraction[] Duties { get; } = [new(1, 5), new(1, 2), new(3, 10)];

    /// <summary>The network.</summary>
    /// <param name="load">The load.</param>
    /// <param name="isTurned">Whether what touches the input does so with its second terminal.</param>
    public static Converter Of(LoadKind load, bool isTurned = false) => Converter.Create("three").Input("vin").Output("vout", load).Duties(Duties)
        .Capacitor("one", "p", "n", 1, 0.3, new CapacitorPlates(BottomFarads: 0.2, TopFarads: 0.15))
        .Capacitor("two", "q", "m", 0.7, 0.2, new CapacitorPlates(TopFarads: 0.3))
        .Capacitor("out", "vout", "gnd", 2, 0.4, new CapacitorPlates(BottomFarads: 0.1, BodyNode: "p"))
        .Parasitic("stray", "n", "q", 0.1).Parasitic("other", isTurned ? "m" : "vin", isTurned ? "vin" : "m", 0.25)
        .Switch("s1", isTurned ? "p" : "vin", isTurned ? "vin" : "p", on: 1).Switch("s2", "n", "q", on: 1, ohms: 0.5).Switch("s3", "m", "vout", on: 1, ohms: 0.8)
        .Switch("s4", "p", "vout", on: 2, ohms: 1.2).Switch("s5", "n", "gnd", on: [2, 3], ohms: 0.7)
        .Switch("s6", "q", "vout", on: 3, ohms: 0.9).Switch("s7", "m", "gnd", on: [2, 3], ohms: 0.6).Build();
}
