using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Pairs;

/// <summary>
/// Which spaces of the moving orbit give the same pair with the fixed space as an earlier one: those that an element
/// which keeps the fixed space leads to one another and, where both are of one orbit, those that come of exchanging
/// the phases.
/// </summary>
internal sealed class ExchangedPairs
{
    private readonly SignedPermutations _group;
    private readonly Stack<int> _waiting = new();
    private readonly int[] _positions;
    private readonly int[] _generator;
    private readonly int[] _composed;
    private bool[] _isMarked = [];
    private MovingOrbit _moving = null!;
    private LoopSpaceOrbit _fixed = null!;

    public ExchangedPairs(SignedPermutations group)
    {
        _group = group;
        _positions = new int[group.Capacitors];
        _generator = new int[group.Capacitors];
        _composed = new int[group.Capacitors];
    }

    /// <summary>Every space gives a pair of its own.</summary>
    public bool AreNone { get; private set; }

    /// <summary>Starts on a fixed space.</summary>
    public void Start(LoopSpaceOrbit fixedOrbit, MovingOrbit moving)
    {
        _fixed = fixedOrbit;
        _moving = moving;
        AreNone = fixedOrbit.Generators.Length == 0 && !ReferenceEquals(fixedOrbit, moving.Orbit);
        if (!AreNone)
        {
            _isMarked = _isMarked.Length < moving.Ways.Length ? new bool[moving.Ways.Length] : _isMarked;
            _isMarked.AsSpan().Clear();
        }
    }

    /// <summary>Whether a space is the first of those that give its pair; the others are then known.</summary>
    public bool IsFirst(int place)
    {
        if (_isMarked[place])
        {
            return false;
        }

        Push(place);
        while (_waiting.TryPop(out int current))
        {
            int turns = MovingOrbit.Unpack(_moving.Ways[current], _positions);
            foreach (int generator in _fixed.Generators)
            {
                int then = _group.Read(generator, _generator);
                int composed = SignedPermutations.Compose(_positions, turns, _generator, then, _composed);
                Push(_moving.PlaceOf(_composed, composed));
            }

            if (ReferenceEquals(_fixed, _moving.Orbit))
            {
                int inverted = SignedPermutations.Invert(_positions, turns, _composed);
                Push(_moving.PlaceOf(_composed, inverted));
            }
        }

        return true;
    }

    private void Push(int place)
    {
        if (!_isMarked[place])
        {
            _isMarked[place] = true;
            _waiting.Push(place);
        }
    }
}
