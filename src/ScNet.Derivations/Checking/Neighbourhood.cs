namespace ScNet.Derivations.Checking;

/// <summary>The equations round an unknown, and the unknowns in them, growing by one ring after another.</summary>
internal sealed class Neighbourhood
{
    private readonly Workbench _bench;
    private readonly HashSet<int> _unknowns = [];
    private readonly HashSet<Equation> _seen = new(ReferenceEqualityComparer.Instance);
    private List<int> _edge;
    private readonly int _maximumTerms;
    private int _rings;
    private int _terms;

    /// <param name="bench">The equations.</param>
    /// <param name="start">The unknown in the middle.</param>
    /// <param name="maximumTerms">How many terms all equations together may have; what lies behind is left outside for good.</param>
    public Neighbourhood(Workbench bench, int start, int maximumTerms)
    {
        _bench = bench;
        _maximumTerms = maximumTerms;
        _edge = [start];
        _unknowns.Add(start);
    }

    /// <summary>The equations that hold for the circuit, those that a reader sees first standing first.</summary>
    public IEnumerable<Equation> Equations => _seen.Where(_bench.Holds).OrderBy(e => e.Kind).ThenBy(e => e.Terms.Length);

    /// <summary>The unknowns in these equations.</summary>
    public IReadOnlyCollection<int> Unknowns => _unknowns;

    /// <summary>Grows to a number of rings; false where nothing is left that may be added.</summary>
    public bool Grow(int rings)
    {
        for (; _rings < rings && _edge.Count > 0; _rings++)
        {
            List<int> next = [];
            foreach (Equation equation in _edge.SelectMany(_bench.Equations.With))
            {
                if (_seen.Add(equation))
                {
                    _terms += equation.Terms.Length;
                    if (_terms > _maximumTerms)
                    {
                        _seen.Remove(equation);
                        _edge = [];
                        return false;
                    }

                    next.AddRange(equation.Terms.Select(t => t.Unknown).Where(_unknowns.Add));
                }
            }

            _edge = next;
        }

        return _edge.Count > 0;
    }
}
