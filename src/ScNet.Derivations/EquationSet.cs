using Fractions;
using ScNet.Kernel;

namespace ScNet.Derivations;

/// <summary>
/// Every linear equation of a mode: Kirchhoff's current law at contracted nodes and at nodes, charge balance,
/// Kirchhoff's voltage law round loops, and what joins them. Redundant on purpose: a reader wants the one
/// equation that shows the mistake, not the independent ones.
/// </summary>
/// <remarks>Equations: docs/theory/derivation-checks.md. Cost: linear in the size of the converter, but for the lengths of loops.</remarks>
internal sealed class EquationSet
{
    private readonly Dictionary<int, List<Equation>> _byUnknown = [];
    private readonly List<Equation> _all = [];

    private EquationSet(Converter converter, Mode mode)
    {
        Converter = converter;
        Network = converter.Network;
        Unknowns = new Unknowns(converter);
        Forests = [.. Enumerable.Range(0, Network.PhaseCount).Select(j => PhaseForest.Of(Network, Network.ClosedIn(mode.Index, j)))];
        Mode = mode;
    }

    public Converter Converter { get; }

    public Mode Mode { get; }

    public SwitchedNetwork Network { get; }

    public Unknowns Unknowns { get; }

    public PhaseForest[] Forests { get; }

    public IReadOnlyList<Equation> All => _all;

    /// <summary>The equations of a mode that has a result.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="blocking">The switches and phases for which the voltage across is wanted.</param>
    public static EquationSet Of(Converter converter, Mode mode, IEnumerable<(int Switch, int Phase)> blocking)
    {
        EquationSet set = new(converter, mode);
        ChargeEquations.AddTo(set);
        VoltageEquations.AddTo(set, blocking);
        set._all.Sort((a, b) => a.Kind.CompareTo(b.Kind));
        foreach (Equation equation in set._all)
        {
            foreach ((int unknown, _) in equation.Terms)
            {
                if (!set._byUnknown.TryGetValue(unknown, out List<Equation>? list))
                {
                    set._byUnknown.Add(unknown, list = []);
                }

                list.Add(equation);
            }
        }

        return set;
    }

    /// <summary>The equations that mention an unknown.</summary>
    public IReadOnlyList<Equation> With(int unknown) => _byUnknown.TryGetValue(unknown, out List<Equation>? list) ? list : [];

    public void Add(EquationKind kind, int place, int phase, IEnumerable<(int Unknown, Fraction Coefficient)> terms, Fraction constant) =>
        _all.Add(new Equation(kind, place, phase, [.. terms], constant));
}
