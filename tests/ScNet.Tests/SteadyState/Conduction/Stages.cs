namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Plain inductive stages whose second phase ends when the coil's current is zero.</summary>
internal static class Stages
{
    public const double Henries = 1e-6;

    public static Converter StepDown(Fractions.Fraction duty, double ohms = 1e-9, LoadKind load = LoadKind.Stiff, double farads = 1e-4) => WithOutput(
        Converter.Create("step-down").Input("vin").Output("vout", load).Duties(duty, 1 - duty)
            .Inductor("coil", "x", "vout", Henries, ohms, untilZero: 2)
            .Switch("high", "vin", "x", on: 1, ohms).Switch("low", "x", Converter.ReferenceNode, on: 2, 2 * ohms),
        load,
        farads);

    public static Converter StepUp(Fractions.Fraction duty, double ohms = 1e-9, LoadKind load = LoadKind.Stiff, double farads = 1e-4) => WithOutput(
        Converter.Create("step-up").Input("vin").Output("vout", load).Duties(duty, 1 - duty)
            .Inductor("coil", "vin", "x", Henries, ohms, untilZero: 2)
            .Switch("low", "x", Converter.ReferenceNode, on: 1, ohms).Switch("high", "vout", "x", on: 2, 2 * ohms),
        load,
        farads);

    public static Converter Inverting(Fractions.Fraction duty, double ohms = 1e-9, LoadKind load = LoadKind.Stiff, double farads = 1e-4) => WithOutput(
        Converter.Create("inverting").Input("vin").Output("vout", load).Duties(duty, 1 - duty)
            .Inductor("coil", "x", Converter.ReferenceNode, Henries, ohms, untilZero: 2)
            .Switch("high", "vin", "x", on: 1, ohms).Switch("low", "x", "vout", on: 2, 2 * ohms),
        load,
        farads);

    /// <summary>Three levels, with two on-times and two phases that end when the current is zero.</summary>
    public static Converter ThreeLevel(double ohms) => Converter.Create("three-level").Input("vin").Output("vout").Duties(0.2, 0.3, 0.2, 0.3)
        .Capacitor("fly", "a", "b", 1e-5).Inductor("coil", "x", "vout", Henries, ohms, untilZero: [2, 4])
        .Switch("s1", "vin", "a", on: 1, ohms).Switch("s2", "a", "x", on: 3, ohms).Switch("s3", "x", "b", on: [1, 2, 4], ohms)
        .Switch("s4", "b", Converter.ReferenceNode, on: [2, 3, 4], ohms).Build();

    /// <summary>A step-down stage with two dead times, in which the body diodes take the coil's current.</summary>
    public static Converter WithDeadTimes(double ohms, double? lowVolts = 0.7, double? highVolts = 0.8, LoadKind load = LoadKind.Stiff, double junction = 0)
    {
        ConverterBuilder builder = Converter.Create("step-down with dead times").Input("vin").Output("vout", load)
            .Duties(0.29, 0.01, 0.67, 0.03)
            .Inductor("coil", "x", "vout", Henries, ohms)
            .Switch("high", "vin", "x", on: 1, ohms, diodeVolts: highVolts).Switch("low", "x", Converter.ReferenceNode, on: 3, ohms, diodeVolts: lowVolts);
        return WithOutput(junction > 0 ? builder.Parasitic("junction", "x", Converter.ReferenceNode, junction) : builder, load, 1e-4);
    }

    private static Converter WithOutput(ConverterBuilder builder, LoadKind load, double farads) =>
        (load == LoadKind.Stiff ? builder : builder.Capacitor("out", "vout", Converter.ReferenceNode, farads, esrOhms: 2e-3)).Build();
}
