using Fractions;
using ScNet.Search.LoopSpaces;
using ScNet.Search.Networks;

namespace ScNet.Search.Triples;

/// <summary>Of all wirings of triples with the same capacitor figures those that nothing beats in the number of switches and the highest voltage that one blocks; proved.</summary>
/// <remarks>
/// A choice of wirings is looked at closely where neither its bound on the number nor that on the voltage is beaten, see <see cref="WiringTriples"/> and <see cref="TripleBlocking"/>; its fewest
/// switches are then counted for every limit of the voltage.
/// </remarks>
internal sealed class WiringFront
{
    private readonly List<(int Count, Fraction Voltage)> _rivals;
    private readonly List<(int Count, Fraction Voltage, Wiring[] Phases, bool IsLimited)> _found = [];
    private readonly SwitchSharing _sharing = new(3);

    private WiringFront(IEnumerable<(int Count, Fraction Voltage)> rivals) => _rivals = [.. rivals];

    /// <summary>The networks, by number of switches.</summary>
    /// <param name="spaces">The spaces.</param>
    /// <param name="places">Triples of spaces with the same capacitor figures.</param>
    /// <param name="rivals">Switches and highest voltages of networks whose capacitors are no worse: what they beat is left out.</param>
    /// <param name="cancellationToken">Stops it.</param>
    public static IReadOnlyList<SearchedNetwork> Of(
        PlacedSpaces spaces, IReadOnlyList<TriplePlace> places, IEnumerable<(int Count, Fraction Voltage)> rivals, CancellationToken cancellationToken)
    {
        WiringFront front = new(rivals);
        foreach (TriplePlace place in places)
        {
            cancellationToken.ThrowIfCancellationRequested();
            int[] numbers = [place.First, place.Second, place.Third];
            front.Try([.. numbers.Select(n => spaces[n])], [.. numbers.Select(spaces.WiringsOf)]);
        }

        return [.. front._found.OrderBy(f => f.Count).Select(Network)];
    }

    private void Try(LoopSpace[] spaces, Wiring[][] phases)
    {
        TripleBlocking blocking = TripleBlocking.Of(phases, spaces);
        int[] most = MostSwitches(blocking);
        WiringTriples triples = WiringTriples.Of(phases);

        // no wirings of a phase take more switches than terminals
        for (int bound = triples.Least; bound <= Math.Min(most[blocking.Least], 3 * phases[0][0].TerminalCount); bound++)
        {
            foreach ((int, int, int) choice in triples.OfBound(bound))
            {
                int wanted = most[blocking.LeastOf(choice)];
                if (bound > wanted)
                {
                    continue;
                }

                Wiring[] wirings = triples[choice];
                if (FewestSwitches.Count(wirings, _sharing, wanted) <= wanted
                    && Add(wirings, SwitchLimits.Of(wirings, SwitchPlan.PermanentGroups(wirings), blocking.Potentials(choice)).Steps(), most, blocking.Scale))
                {
                    most = MostSwitches(blocking);
                }
            }
        }
    }

    private bool Add(Wiring[] phases, IReadOnlyList<(int Count, long Limit)> steps, int[] most, long scale)
    {
        bool isAdded = false;
        foreach ((int count, long limit) in steps.Where(s => s.Count <= most[s.Limit]))
        {
            Fraction voltage = new(limit, scale);
            _found.RemoveAll(f => count <= f.Count && voltage <= f.Voltage);
            _found.Add((count, voltage, phases, count > steps[^1].Count));
            isAdded = true;
        }

        return isAdded;
    }

    // per highest voltage the most switches that nothing beats
    private int[] MostSwitches(TripleBlocking blocking)
    {
        int[] most = new int[blocking.Most + 1];
        Array.Fill(most, int.MaxValue);
        foreach ((int count, Fraction voltage) in _rivals.Concat(_found.Select(f => (f.Count, f.Voltage))))
        {
            Fraction scaled = voltage * blocking.Scale;
            for (int v = (int)decimal.Ceiling((decimal)scaled); v < most.Length; v++)
            {
                most[v] = Math.Min(most[v], count - 1);
            }
        }

        return most;
    }

    private static SearchedNetwork Network((int Count, Fraction Voltage, Wiring[] Phases, bool IsLimited) found) =>
        SearchedNetwork.TryCreate(found.Phases, SwitchLayout.Fewest, found.IsLimited ? found.Voltage : null, out SearchedNetwork? network)
            ? network
            : throw new InvalidOperationException($"The wirings {string.Join(", ", found.Phases.Select(p => p.ToCode()))} of the search make no network.");
}
