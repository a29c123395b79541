using ScNet.Netlists;

namespace ScNet.Derivations.Tests;

/// <summary>Small converters that the tests of derivations share.</summary>
internal static class Circuits
{
    public static Converter Half() => Bridge("Half", b => b.Capacitor("fly", "p", "n"));

    /// <summary>Nothing divides the voltage among two capacitors that are always in series.</summary>
    public static Converter Series() => Bridge("Series", b => b.Capacitor("a", "p", "m").Capacitor("b", "m", "n"));

    /// <summary>Capacitances divide the charge: one to three.</summary>
    public static Converter Parallel(double farads = 1e-9) =>
        Bridge("Parallel", b => b.Capacitor("a", "p", "n", farads).Capacitor("b", "p", "n", 3e-9));

    public static Converter WithoutResult() => Bridge("Shorted", b => b.Capacitor("fly", "p", "n").Switch("short", "vin", "gnd", on: 1));

    public static Converter ThreePhases() =>
        NetlistReader.ReadFile(Path.Combine(RepositoryFiles.Root, "docs/examples/three-phase-4.toml")).GetConverter();

    private static Converter Bridge(string name, Func<ConverterBuilder, ConverterBuilder> capacitors) =>
        capacitors(Converter.Create(name).Input("vin").Output("vout"))
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Build();
}
