using Fractions;

namespace ScNet.Tests.Design.Losses;

/// <summary>
/// A stage of one coil of 2 H between two pairs of switches, with phases of 1/4, 1/4 and 1/2. Volts across the coil balance
/// at a ratio of 2/3: 1, 1/3 and -2/3 per volt of input. Its current rises by 1/8 and 1/24 and falls by 1/6, about a mean
/// of 3/32 above its valley; per ampere of load it is 4/3, as the load takes it in phases 2 and 3 alone.
/// </summary>
internal static class FourSwitchStage
{
    public static readonly Fraction[] Duties = [new(1, 4), new(1, 4), new(1, 2)];

    public static readonly double[] Rises = [1 / 8.0, 1 / 24.0, -1 / 6.0];

    public static readonly double[] Means = [-1 / 32.0, 5 / 96.0, -1 / 96.0];

    public static Converter Build() => Converter.Create("four switches").Input("vin").Output("vout").Duties(Duties)
        .Switch("s1", "vin", "x", [1, 2], 0.2).Switch("s2", "x", "gnd", 3, 0.3).Inductor("coil", "x", "y", henries: 2, ohms: 0.1)
        .Switch("s3", "y", "gnd", 1, 0.4).Switch("s4", "y", "vout", [2, 3], 0.5).Build();
}
