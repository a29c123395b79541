namespace ScNet.Testing.Networks;

/// <summary>Step-down ladders of any height, built by hand for the tests.</summary>
internal static class Ladders
{
    /// <summary>
    /// A ladder with ratio 1/n: n - 1 flying capacitors between neighbouring rungs, the rungs held by
    /// n - 2 dc capacitors and the output at the bottom; with an extra dc capacitor from the top rung to
    /// the one below it, n - 1.
    /// </summary>
    public static ConverterBuilder Builder(int n, bool hasTopCapacitor = false, double farads = 1, double ohms = 1)
    {
        string Rung(int k) => k == 0 ? Converter.ReferenceNode : k == 1 ? "vout" : k == n ? "vin" : $"r{k}";
        ConverterBuilder builder = Converter.Create($"{n}:1 ladder").Input("vin").Output("vout");
        for (int k = 1; k < n; k++)
        {
            builder.Capacitor($"fly{k}", $"m{k + 1}", $"m{k}", farads);
        }

        for (int k = 2; k <= n - (hasTopCapacitor ? 0 : 1); k++)
        {
            builder.Capacitor($"dc{k}", Rung(k), Rung(k - 1), farads);
        }

        for (int k = 1; k <= n; k++)
        {
            builder.Switch($"up{k}", Rung(k), $"m{k}", on: 1, ohms).Switch($"down{k}", $"m{k}", Rung(k - 1), on: 2, ohms);
        }

        return builder;
    }

    public static Converter Of(int n, bool hasTopCapacitor = false) => Builder(n, hasTopCapacitor).Build();
}
