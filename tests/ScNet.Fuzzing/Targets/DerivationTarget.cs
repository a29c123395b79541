using ScNet.Derivations;
using ScNet.Derivations.Documents;

namespace ScNet.Fuzzing.Targets;

/// <summary>
/// Derivation documents about one of three converters, which the first line chooses ("#2", "#3"): what is accepted is
/// checked, and says the same when it is read again; what is not has an error at its place.
/// </summary>
internal static class DerivationTarget
{
    private static readonly Converter s_half = Half("Half").Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();

    private static readonly Converter s_twoModes = Half("Gears").Switch("s1", "vin", "p").Switch("s2", "n", "vout").Switch("s3", "p", "vout").Switch("s4", "n", "gnd")
        .Mode("1/2", ("s1", 1), ("s2", 1), ("s3", 2), ("s4", 2)).Mode("1/1", ("s1", [1, 2]), ("s3", [1, 2])).Build();

    private static readonly Converter s_threePhases = Converter.Create("Third").Input("vin").Output("vout").Phases(3).PhaseNames("a", "b", "c")
        .Capacitor("c1", "x", "vout").Capacitor("c2", "y", "gnd")
        .Switch("s1", "vin", "x", [1]).Switch("s2", "x", "y", [2]).Switch("s3", "y", "vout", [3]).Switch("s4", "x", "y", [3]).Build();

    public static void Try(byte[] bytes)
    {
        string text = TextInput.Of(bytes);
        Converter converter = text.StartsWith("#2", StringComparison.Ordinal) ? s_twoModes : text.StartsWith("#3", StringComparison.Ordinal) ? s_threePhases : s_half;
        DerivationReading reading = DerivationReader.Read(text, converter);
        Property.Findings(text, reading.HasResult, reading.Diagnostics);
        if (reading.Derivation is not { } derivation)
        {
            return;
        }

        Derivation again = DerivationReader.Read(text, converter).GetDerivation();
        Property.Same(derivation.ToString(), again.ToString(), "what is read once and twice");
        Property.Holds(derivation.Equals(again), "equal derivations, read once and twice");
        _ = derivation.Check().ToString();
    }

    private static ConverterBuilder Half(string name) => Converter.Create(name).Input("vin").Output("vout").Capacitor("fly", "p", "n");
}
