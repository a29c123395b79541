using System.Globalization;
using Fractions;

namespace ScNet.Testing.Networks;

/// <summary>
/// The stages of the textbooks with inductors, written out by hand: phase 1 lasts the duty, phase 2 the rest.
/// </summary>
/// <remarks>Source: R. W. Erickson and D. Maksimovic, "Fundamentals of Power Electronics", chapters 2 and 6 (from memory).</remarks>
internal static class InductiveStages
{
    public static ConverterBuilder StepDown(Fraction duty, LoadKind load = LoadKind.Stiff) => Start("step-down", duty, load)
        .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Inductor("coil", "x", "vout");

    public static ConverterBuilder StepUp(Fraction duty, LoadKind load = LoadKind.Stiff) => Start("step-up", duty, load)
        .Inductor("coil", "vin", "x").Switch("low", "x", "gnd", on: 1).Switch("high", "x", "vout", on: 2);

    public static ConverterBuilder Inverting(Fraction duty, LoadKind load = LoadKind.Stiff) => Start("inverting", duty, load)
        .Switch("s1", "vin", "x", on: 1).Switch("s2", "x", "vout", on: 2).Inductor("coil", "x", "gnd");

    /// <summary>Two inductors with a capacitor between them, the output negative.</summary>
    public static ConverterBuilder CapacitorCoupledInverting(Fraction duty, LoadKind load = LoadKind.Stiff) => Start("coupled inverting", duty, load)
        .Inductor("l1", "vin", "x").Switch("s1", "x", "gnd", on: 1).Capacitor("fly", "x", "y").Switch("s2", "y", "gnd", on: 2).Inductor("l2", "y", "vout");

    /// <summary>An inductor at the input and one to the reference, the output positive.</summary>
    public static ConverterBuilder SinglePrimary(Fraction duty, LoadKind load = LoadKind.Stiff) => Start("up and down", duty, load)
        .Inductor("l1", "vin", "x").Switch("s1", "x", "gnd", on: 1).Capacitor("fly", "x", "y").Inductor("l2", "y", "gnd").Switch("s2", "y", "vout", on: 2);

    /// <summary>The same from back to front.</summary>
    public static ConverterBuilder ReversedSinglePrimary(Fraction duty, LoadKind load = LoadKind.Stiff) => Start("up and down reversed", duty, load)
        .Switch("s1", "vin", "x", on: 1).Inductor("l1", "x", "gnd").Capacitor("fly", "y", "x").Switch("s2", "y", "gnd", on: 2).Inductor("l2", "y", "vout");

    /// <summary>Two switches that close together, step-down or step-up with one inductor.</summary>
    public static ConverterBuilder FourSwitch(Fraction duty, LoadKind load = LoadKind.Stiff) => Start("four switches", duty, load)
        .Switch("s1", "vin", "x", on: 1).Switch("s2", "x", "gnd", on: 2).Inductor("coil", "x", "y").Switch("s3", "y", "gnd", on: 1).Switch("s4", "y", "vout", on: 2);

    /// <summary>
    /// The n-level stage: pairs of switches 1 … n − 1 from the input inwards, flying capacitor k behind pair k, and the
    /// coil to the output.
    /// </summary>
    /// <param name="levels">n.</param>
    /// <param name="intervals">The duty of each phase.</param>
    /// <param name="on">For each phase the pairs, from 1, whose upper switch is closed; of the others the lower one is.</param>
    /// <param name="controlled">For each flying capacitor the share at which a controller holds it; null for none.</param>
    public static ConverterBuilder MultiLevel(int levels, Fraction[] intervals, int[][] on, Fraction?[]? controlled = null)
    {
        ConverterBuilder builder = Converter.Create(string.Create(CultureInfo.InvariantCulture, $"{levels} levels")).Input("vin").Output("vout").Duties(intervals);
        for (int k = 1; k < levels; k++)
        {
            int[] upper = [.. Enumerable.Range(1, on.Length).Where(j => on[j - 1].Contains(k))];
            int[] lower = [.. Enumerable.Range(1, on.Length).Except(upper)];
            builder.Switch($"u{k}", Node("t", k - 1), Node("t", k), on: [.. upper]);
            builder.Switch($"d{k}", Node("b", k - 1), Node("b", k), on: [.. lower]);
            if (k < levels - 1)
            {
                builder.Capacitor($"fly{k}", Node("t", k), Node("b", k), controlled: controlled?[k - 1]);
            }
        }

        return builder.Inductor("coil", "x", "vout");

        string Node(string side, int k) => k == levels - 1 ? "x" : k > 0 ? string.Create(CultureInfo.InvariantCulture, $"{side}{k}") : side == "t" ? "vin" : "gnd";
    }

    /// <summary>The n-level stage with each pair closed for an equal share below 1/(n − 1) in turn, freewheeling in between.</summary>
    public static ConverterBuilder MultiLevel(int levels, Fraction duty)
    {
        Fraction rest = new Fraction(1, levels - 1) - duty;
        return MultiLevel(
            levels,
            [.. Enumerable.Range(0, 2 * (levels - 1)).Select(j => j % 2 == 0 ? duty : rest)],
            [.. Enumerable.Range(0, 2 * (levels - 1)).Select(j => j % 2 == 0 ? new[] { (j / 2) + 1 } : [])]);
    }

    /// <summary>
    /// Four levels with lower stress: two flying capacitors charged in series, then discharged one by one, each third
    /// followed by freewheeling.
    /// </summary>
    public static ConverterBuilder SeriesCharged(Fraction duty)
    {
        Fraction rest = new Fraction(1, 3) - duty;
        return Converter.Create("series charged").Input("vin").Output("vout").Duties(duty, rest, duty, rest, duty, rest)
            .Capacitor("fly1", "a", "b").Capacitor("fly2", "c", "d")
            .Switch("in", "vin", "a", on: 1).Switch("join", "b", "c", on: 1).Switch("last", "d", "x", on: 1)
            .Switch("a1", "a", "x", on: 3).Switch("b1", "b", "gnd", on: 3)
            .Switch("a2", "c", "x", on: 5).Switch("b2", "d", "gnd", on: 5)
            .Switch("free", "x", "gnd", on: [2, 4, 6]).Inductor("coil", "x", "vout");
    }

    private static ConverterBuilder Start(string name, Fraction duty, LoadKind load)
    {
        ConverterBuilder builder = Converter.Create(name).Input("vin").Output("vout", load).Duties(duty, 1 - duty);
        return load == LoadKind.Current ? builder.Capacitor("out", "vout", "gnd", farads: 3) : builder;
    }
}
