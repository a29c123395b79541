using System.Numerics;

namespace ScNet.Search.Networks;

/// <summary>
/// Which pairs of terminals get one switch for several phases, so that the switches are as few as any that make the
/// wirings. Exact. May be used again and again; one per thread.
/// </summary>
/// <remarks>
/// A phase needs a tree over the terminals of each of its nodes, and a pair that lies in nodes of several phases may be a branch of several
/// trees. What is saved by the pairs D is Σ rank_j(D) − |D|, the rank that of the graph of phase j: any choice is completed to
/// trees by pairs that each serve one phase. Pairs are taken or left one by one; a pair that does not join two pieces in
/// two phases at least saves nothing there and is left (docs/theory/atlas.md). What the pairs from some place on can still save is
/// at most their saving alone, bounded by the ranks of the phases and of the pairs that lie in nodes of the same phases. Cost: exponential in
/// the pairs at the worst; mostly the bound is met at once.
/// </remarks>
internal sealed class SwitchSharing
{
    private readonly int _phases;
    private readonly List<(int First, int Second, int Phases)> _pairs = [];
    private readonly List<int> _chosen = [];
    private readonly List<int> _taken = [];
    private readonly List<int> _kinds = [];
    private int[] _bounds = [];
    private uint[] _pieces = [];
    private int _points;
    private int _best;
    private int _enough;

    public SwitchSharing(int phases) => _phases = phases;

    /// <summary>The pairs of the best choice, after <see cref="Most"/>.</summary>
    public IEnumerable<(int First, int Second)> Chosen => _chosen.Select(p => (_pairs[p].First, _pairs[p].Second));

    /// <summary>Starts on other terminals.</summary>
    /// <param name="points">The number of terminals, those that are joined in every phase being one; at most 32.</param>
    public void Start(int points)
    {
        _points = points;
        _pairs.Clear();
        _kinds.Clear();
    }

    /// <summary>Adds a pair.</summary>
    /// <param name="first">A terminal.</param>
    /// <param name="second">Another.</param>
    /// <param name="phases">A bit per phase in which both lie in one node; a pair of fewer than two is of no use here and left out.</param>
    public void Add(int first, int second, int phases)
    {
        if (BitOperations.PopCount((uint)phases) > 1)
        {
            _pairs.Add((first, second, phases));
            if (!_kinds.Contains(phases))
            {
                _kinds.Add(phases);
            }
        }
    }

    /// <summary>The most switches that can be saved.</summary>
    /// <param name="enough">The search ends once so many are; what is returned is then no more than that there are as many.</param>
    /// <param name="least">Fewer are of no interest; what is returned may then be too small.</param>
    public int Most(int enough = int.MaxValue, int least = 0)
    {
        Bound();
        _best = Math.Max(0, least - 1);
        _enough = Math.Min(enough, _bounds[0]);
        _chosen.Clear();
        _taken.Clear();
        Grow(ref _pieces, (_pairs.Count + 1) * _phases * _points);
        Pieces.Separate(_pieces.AsSpan(0, _phases * _points), _points);
        if (_bounds[0] > _best)
        {
            Choose(0, 0, 0);
        }

        return _best;
    }

    private void Choose(int pair, int saved, int depth)
    {
        if (saved > _best)
        {
            _best = saved;
            _chosen.Clear();
            _chosen.AddRange(_taken);
        }

        for (; pair < _pairs.Count && _best < _enough && saved + _bounds[pair] > _best; pair++)
        {
            (int first, int second, int phases) = _pairs[pair];
            Span<uint> here = _pieces.AsSpan(depth * _phases * _points, _phases * _points);
            Span<uint> next = _pieces.AsSpan((depth + 1) * _phases * _points, _phases * _points);
            here.CopyTo(next);
            int saves = -1;
            for (int phase = 0; phase < _phases; phase++)
            {
                saves += (phases >> phase & 1) != 0 && Pieces.Join(next.Slice(phase * _points, _points), first, second) ? 1 : 0;
            }

            if (saves > 0)
            {
                _taken.Add(pair);
                Choose(pair + 1, saved + saves, depth + 1);
                _taken.RemoveAt(_taken.Count - 1);
            }
        }
    }

    // what the pairs from each place on can save at most
    private void Bound()
    {
        Grow(ref _bounds, _pairs.Count + 1);
        Span<uint> ofPhase = stackalloc uint[_phases * _points], ofKind = stackalloc uint[_kinds.Count * _points];
        Pieces.Separate(ofPhase, _points);
        Pieces.Separate(ofKind, _points);
        int ranks = 0, kinds = 0;
        _bounds[_pairs.Count] = 0;
        for (int pair = _pairs.Count - 1; pair >= 0; pair--)
        {
            (int first, int second, int phases) = _pairs[pair];
            for (int phase = 0; phase < _phases; phase++)
            {
                ranks += (phases >> phase & 1) != 0 && Pieces.Join(ofPhase.Slice(phase * _points, _points), first, second) ? 1 : 0;
            }

            kinds += Pieces.Join(ofKind.Slice(_kinds.IndexOf(phases) * _points, _points), first, second) ? BitOperations.PopCount((uint)phases) - 1 : 0;

            // a pair lies in all phases but one at most, or it would be one terminal
            _bounds[pair] = Math.Min(kinds, ranks * (_phases - 2) / (_phases - 1));
        }
    }

    private static void Grow<T>(ref T[] array, int length) => array = array.Length < length ? new T[2 * length] : array;
}
