using Fractions;
using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Queries;

/// <summary>Who a network is, however it is numbered: its name and its families.</summary>
/// <param name="Name">The name.</param>
/// <param name="Families">The families with the same loops.</param>
internal sealed record NetworkIdentity(string Name, IReadOnlyList<string> Families)
{
    private const string Consonants = "bcdfghjklmnpqrstvwxz", Vowels = "aeiou";

    // a million words for the networks of one ratio and size
    private const int Syllables = 3;

    /// <summary>The identity of a network.</summary>
    public static NetworkIdentity Of(SearchedNetwork network)
    {
        PhasesForm form = PhasesForm.Of([.. network.Phases.Select(LoopSpace.Of)]);
        string structure = form.Ways
            .Select(way => string.Join('|', way.Order.Select(p => network.Phases[p].Moved(way.Positions, way.Turns).ToCode())))
            .Min(StringComparer.Ordinal)!;
        string word = Word(network.Layout switch
        {
            SwitchLayout.LowestBlocking => structure,
            SwitchLayout.LeastCharge => structure + "|straight",
            _ => structure + "|fewest" + (network.SwitchVoltageLimit is { } limit ? $"|{Quantity.Exact(limit)}" : string.Empty),
        });
        return new NetworkIdentity(
            FormattableString.Invariant($"{InFileNames(network.Ratio)}-c{network.CapacitorCount}-s{network.Switches.Count}-{word}"),
            KnownFamilies.Of(network.CapacitorCount).Named(form));
    }

    // a name of a file cannot hold a slash everywhere
    private static string InFileNames(Fraction ratio) =>
        (ratio.IsNegative ? "minus-" : string.Empty) + Quantity.Exact(ratio.Abs()).ToString().Replace('/', '-');

    // consonant and vowel in turn, from the hash of Fowler, Noll and Vo (FNV-1a, 64 bits)
    private static string Word(string structure)
    {
        ulong hash = 14695981039346656037;
        foreach (char sign in structure)
        {
            hash = (hash ^ sign) * 1099511628211;
        }

        return string.Create(2 * Syllables, hash, static (word, left) =>
        {
            for (int s = 0; s < word.Length; s += 2)
            {
                (left, ulong syllable) = Math.DivRem(left, (ulong)(Consonants.Length * Vowels.Length));
                word[s] = Consonants[(int)syllable / Vowels.Length];
                word[s + 1] = Vowels[(int)syllable % Vowels.Length];
            }
        });
    }
}
