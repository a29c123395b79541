using Fractions;
using ScNet.Derivations.Expressions;
using ScNet.Kernel;

namespace ScNet.Derivations.Working;

/// <summary>The charges of the flow that topology gives, by their symbols, and tables of charges.</summary>
internal sealed class ExactCharges
{
    private readonly WorkedMode _mode;
    private readonly Dictionary<Symbol, Fraction> _values = [];

    public ExactCharges(WorkedMode mode)
    {
        _mode = mode;
        SwitchedNetwork network = mode.Converter.Network;
        for (int branch = 0; branch < network.BranchCount; branch++)
        {
            for (int phase = 0; phase < network.PhaseCount; phase++)
            {
                // a branch's charge is one symbol, of the input with a minus
                Term term = mode.Charge(branch, phase).Terms[0];
                Fraction charge = mode.Analysis.Topology.Branches[(branch * network.PhaseCount) + phase].ToFraction();
                _values[term.Factors[0].Symbol] = charge * term.Coefficient;
            }
        }
    }

    /// <summary>The value of a sum of charges.</summary>
    public Fraction Value(Expression sum) => sum.Terms.Aggregate(Fraction.Zero, (total, t) => total + ValueOf(t));

    /// <summary>The sum with a number in the place of each charge: "1/3 - 1/3".</summary>
    public string InNumbers(Expression sum)
    {
        string text = string.Empty;
        foreach (Term term in sum.Terms)
        {
            Fraction value = ValueOf(term);
            string sign = text.Length == 0 ? (value.IsNegative ? "-" : string.Empty) : value.IsNegative ? " - " : " + ";
            text += $"{sign}{Quantity.Exact(value.Abs())}";
        }

        return text.Length > 0 ? text : "0";
    }

    /// <summary>A table of the charges of capacitors, ports and switches by phase; index as in the analysis.</summary>
    /// <param name="branches">Charges through branches from their first terminal to their second.</param>
    /// <param name="switches">Charges through switches.</param>
    /// <param name="isWhole">Whether elements without charge are shown too.</param>
    public Table Table(Quantity[] branches, Quantity[] switches, bool isWhole)
    {
        Converter converter = _mode.Converter;
        SwitchedNetwork network = converter.Network;
        List<IReadOnlyList<Line>> rows = [];
        for (int c = 0; c < network.CapacitorCount; c++)
        {
            Add(_mode.Name(c), branches, c, isNegative: false);
        }

        Add(new Named(converter.InputNode), branches, network.InputBranch, isNegative: true, "input ");
        Add(new Named(converter.OutputNode), branches, network.OutputBranch, isNegative: false, "output ");
        for (int s = 0; s < network.SwitchCount; s++)
        {
            Add(new Named(converter.Switches[s].Name), switches, s, isNegative: false);
        }

        return new Table(["charge of", .. converter.Phases.Select(p => $"phase {TermParts.Digits(p.Number)}")], rows);

        void Add(Named name, Quantity[] charges, int element, bool isNegative, string kind = "")
        {
            Quantity[] own = [.. charges[(element * network.PhaseCount)..((element + 1) * network.PhaseCount)].Select(Shown.Value)];
            if (isWhole || own.Any(q => q.Sign != 0))
            {
                rows.Add([Line.Of($"{kind}{name}"), .. own.Select(q => Line.Of($"{(isNegative ? -q : q)}"))]);
            }
        }
    }

    private Fraction ValueOf(Term term) => term.Coefficient * _values[term.Factors[0].Symbol];
}
