using Fractions;

namespace ScNet.TwoPhaseSearch;

/// <summary>
/// The best two-phase network for each ratio: the fewest flying capacitors, then the fewest switches, then
/// the lowest sums of charge · voltage, as <see cref="Candidate.Best"/> has them.
/// </summary>
internal static class BestNetworks
{
    /// <summary>The network of every wanted ratio that up to so many capacitors give, ordered by ratio.</summary>
    public static SortedDictionary<Fraction, Candidate> Find(int mostCapacitors, Predicate<Fraction> wanted)
    {
        SortedDictionary<Fraction, Candidate> best = [];
        for (int capacitors = 1; capacitors <= mostCapacitors; capacitors++)
        {
            TwoPhaseNetworks networks = new(capacitors);
            foreach ((Fraction ratio, List<WiringPair> pairs) in networks.FewestSwitches(r => wanted(r) && !best.ContainsKey(r)))
            {
                best.Add(ratio, Candidate.Best(pairs));
            }
        }

        return best;
    }
}
