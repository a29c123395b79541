using ScNet.Search.Networks;

namespace ScNet.Search.Triples;

/// <summary>Chooses the wirings of three phases that take the fewest switches; that there are no fewer is proved.</summary>
/// <remarks>
/// Choices of wirings are tried by their bound, see <see cref="WiringTriples"/>, and each is counted exactly, up to the bound that the fewest found do not exceed. Of those that take
/// the fewest the first are compared in what else the switches ask for.
/// </remarks>
internal sealed class TripleWirings
{
    private const int MostCompared = 32;

    private readonly List<Wiring[]> _fewest = [];
    private readonly SwitchSharing _sharing = new(3);
    private int _count = FewestSwitches.TooMany;
    private int _wanted = FewestSwitches.TooMany;

    private TripleWirings()
    {
    }

    /// <summary>The network with the fewest switches; of the first that have as few, the lowest blocking voltage, charge–voltage product, swing and charge.</summary>
    /// <param name="spaces">The spaces.</param>
    /// <param name="places">Triples of spaces, of which any will do.</param>
    public static SearchedNetwork Choose(PlacedSpaces spaces, IReadOnlyList<TriplePlace> places)
    {
        TripleWirings wirings = new();
        Wiring[][] Of(TriplePlace place) => [spaces.WiringsOf(place.First), spaces.WiringsOf(place.Second), spaces.WiringsOf(place.Third)];
        foreach ((TriplePlace place, int least) in places.Select(p => (Place: p, WiringTriples.Of(Of(p)).Least)).OrderBy(p => p.Least).ThenBy(p => p.Place))
        {
            if (least <= wirings._wanted)
            {
                wirings.Try(WiringTriples.Of(Of(place)));
            }
        }

        return wirings._fewest.Select(Network).Order(Comparer<SearchedNetwork>.Create(Compare)).First();
    }

    private void Try(WiringTriples triples)
    {
        for (int bound = triples.Least; bound <= _wanted; bound++)
        {
            foreach ((int, int, int) choice in triples.OfBound(bound).TakeWhile(_ => bound <= _wanted))
            {
                Wiring[] phases = triples[choice];
                int count = FewestSwitches.Count(phases, _sharing, _wanted);
                if (count > _wanted)
                {
                    continue;
                }

                if (count < _count)
                {
                    _fewest.Clear();
                }

                _fewest.Add(phases);

                // as few again are of interest while there are not enough to compare
                _count = count;
                _wanted = _fewest.Count < MostCompared ? count : count - 1;
            }
        }
    }

    private static int Compare(SearchedNetwork one, SearchedNetwork other)
    {
        NetworkMeasures a = one.Measures, b = other.Measures;
        int order = a.HighestSwitchVoltage.CompareTo(b.HighestSwitchVoltage);
        order = order != 0 ? order : a.SwitchChargeVoltage.CompareTo(b.SwitchChargeVoltage);
        order = order != 0 ? order : a.PlateSwing.CompareTo(b.PlateSwing);
        return order != 0 ? order : a.SwitchCharge.CompareTo(b.SwitchCharge);
    }

    private static SearchedNetwork Network(Wiring[] phases) =>
        SearchedNetwork.TryCreate(phases, SwitchLayout.Fewest, out SearchedNetwork? network)
            ? network
            : throw new InvalidOperationException($"The wirings {string.Join(", ", phases.Select(p => p.ToCode()))} of the search make no network.");
}
