using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Derivations.Checking;

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

    private EquationSet(ModeAnalysis analysis)
    {
        Converter converter = analysis.Converter;
        Converter = converter;
        Network = converter.Network;
        Unknowns = new Unknowns(converter);
        Topology = analysis.Topology;
    }

    public Converter Converter { get; }

    public SwitchedNetwork Network { get; }

    public Unknowns Unknowns { get; }

    public TopologySolution Topology { get; }

    public PhaseForest[] Forests => Topology.Forests;

    public IReadOnlyList<Equation> All => _all;

    /// <summary>The equations of a mode that has a result.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="blocking">The switches and phases for which the voltage across is wanted.</param>
    public static EquationSet Of(ModeAnalysis analysis, IEnumerable<(int Switch, int Phase)> blocking)
    {
        EquationSet set = new(analysis);
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
