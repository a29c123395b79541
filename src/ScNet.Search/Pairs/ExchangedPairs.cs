using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Pairs;

/// <summary>
/// Which spaces of the moving orbit give the same pair with the fixed space as an earlier one: those that an element
/// which keeps the fixed space makes of one another and, where both are of one orbit, those that come of exchanging
/// the phases.
/// </summary>
internal sealed class ExchangedPairs
{
    private readonly Stack<int> _waiting = new();
    private readonly List<int[]> _images = [];
    private bool[] _isMarked = [];

    /// <summary>Every space gives a pair of its own.</summary>
    public bool AreNone => _images.Count == 0;

    /// <summary>Starts on a fixed space.</summary>
    public void Start(LoopSpaceOrbit fixedOrbit, MovingOrbit moving)
    {
        _images.Clear();
        foreach (int generator in fixedOrbit.Generators)
        {
            _images.Add(moving.ImagesBy(generator));
        }

        if (ReferenceEquals(fixedOrbit, moving.Orbit))
        {
            _images.Add(moving.Inverses());
        }

        if (!AreNone)
        {
            _isMarked = _isMarked.Length < moving.Ways.Length ? new bool[moving.Ways.Length] : _isMarked;
            _isMarked.AsSpan().Clear();
        }
    }

    /// <summary>Whether a space is the first of those that give its pair; the others are then known.</summary>
    /// <param name="place">The space's place among those of the moving orbit.</param>
    public bool IsFirst(int place)
    {
        if (_isMarked[place])
        {
            return false;
        }

        _isMarked[place] = true;
        _waiting.Push(place);
        while (_waiting.TryPop(out int current))
        {
            foreach (int[] images in _images)
            {
                int image = images[current];
                if (!_isMarked[image])
                {
                    _isMarked[image] = true;
                    _waiting.Push(image);
                }
            }
        }

        return true;
    }
}
