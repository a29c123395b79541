using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Derivations.Expressions;
using ScNet.Kernel;

namespace ScNet.Derivations.Working;

/// <summary>
/// The steps of the analysis of one mode, kept for showing: phase graphs, loops, the eliminated
/// equations. What comes after a step that fails is null.
/// </summary>
internal sealed class WorkedMode
{
    private readonly SwitchedNetwork _network;

    public WorkedMode(Converter converter, Mode mode)
    {
        InductorSupport.Refuse(converter, "The worked solution");
        _network = converter.Network;
        Outcome = ModeAnalysis.Try(converter, mode);
        Converter = converter;
        Mode = mode;
        Graphs = [.. Forests.Select((forest, phase) => PhaseGraph.Of(converter, mode, phase + 1, forest))];
    }

    public Converter Converter { get; }

    public Mode Mode { get; }

    public ModeOutcome Outcome { get; }

    /// <summary>The analysis, where there is a result.</summary>
    public ModeAnalysis Analysis => Outcome.Require();

    public PhaseGraph[] Graphs { get; }

    public PhaseForest[] Forests => Outcome.Topology.Forests;

    public LoopSet? Loops => Outcome.Topology.Loops;

    public ILoopSolution? Solution => Outcome.Topology.Solution;

    /// <summary>The name of a branch: of the capacitor, or of the port's node.</summary>
    public Named Name(int branch) => new(Converter.BranchName(branch));

    /// <summary>The voltage of a branch.</summary>
    public Expression Voltage(int branch) => Expression.Of(branch == _network.InputBranch ? Symbol.InputVoltage
        : branch == _network.OutputBranch ? new Symbol(SymbolKind.OutputVoltage)
        : new Symbol(SymbolKind.ElementVoltage, Converter.Capacitors[branch].Name));

    /// <summary>The charge through a branch in a phase, from its first terminal to its second.</summary>
    public Expression Charge(int branch, int phase) => branch == _network.InputBranch
        ? -Expression.Of(new Symbol(SymbolKind.InputCharge, phase: phase + 1))
        : Expression.Of(branch == _network.OutputBranch
            ? new Symbol(SymbolKind.OutputCharge, phase: phase + 1)
            : new Symbol(SymbolKind.ElementCharge, Converter.Capacitors[branch].Name, phase + 1));

    /// <summary>The voltages round a loop. Through a load current the output is at a potential of its own in each phase.</summary>
    public Expression RoundLoop(LoopSet loops, int loop)
    {
        int phase = loops.Phase(loop);
        ReadOnlySpan<int> branches = loops.Branches(loop), signs = loops.Signs(loop);
        List<Expression> terms = [];
        for (int e = 0; e < branches.Length; e++)
        {
            Expression voltage = branches[e] == _network.OutputBranch && Converter.Load == LoadKind.Current
                ? Expression.Of(new Symbol(SymbolKind.NodePotential, Converter.OutputNode, phase + 1))
                : Voltage(branches[e]);
            terms.Add(signs[e] > 0 ? voltage : -voltage);
        }

        return Expression.Sum(terms);
    }

    /// <summary>The equation of all loops through a load current together, with the average output voltage.</summary>
    public Expression LoadEquation()
    {
        List<Expression> terms = [];
        for (int loop = Loops!.VoltageLoopCount; loop < Loops.Count; loop++)
        {
            Fraction weight = new(_network.PhaseWeights[Loops.Phase(loop)]);
            ReadOnlySpan<int> branches = Loops.Branches(loop), signs = Loops.Signs(loop);
            for (int e = 0; e < branches.Length; e++)
            {
                terms.Add(Expression.Of(signs[e] > 0 ? weight : -weight) * Voltage(branches[e]));
            }
        }

        return Expression.Sum(terms);
    }

    /// <summary>A row of the eliminated equations, as the sum that it says to be zero.</summary>
    public Expression ReducedRow(int row) => Expression.Sum(
        [.. Solution!.ReducedRow(row).Select(e => Expression.Of(new Fraction(e.Factor)) * Voltage(e.Column))]);

    /// <summary>The factor of one column in a row of the eliminated equations.</summary>
    public BigInteger Entry(int row, int column) => Array.Find(Solution!.ReducedRow(row), e => e.Column == column).Factor;

    /// <summary>How a row of the eliminated equations comes of the first ones: "(1) - 2·(3)".</summary>
    public string Combination(int row)
    {
        Rational<BigInteger>[] weights = Solution!.EquationWeights(row);
        string text = string.Empty;
        for (int k = 0; k < weights.Length; k++)
        {
            Fraction weight = Exact(weights[k]);
            if (!weight.IsZero)
            {
                string factor = weight.Abs().Equals(Fraction.One) ? string.Empty : $"{Quantity.Exact(weight.Abs())}·";
                string sign = text.Length == 0 ? (weight.IsNegative ? "-" : string.Empty) : weight.IsNegative ? " - " : " + ";
                text += $"{sign}{factor}{Label(k)}";
            }
        }

        return text;
    }

    /// <summary>The number of an equation in brackets.</summary>
    public static string Label(int equation) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"({equation + 1})");

    public static Fraction Exact(Rational<BigInteger> value) => new(value.Numerator, value.Denominator, true);

    /// <summary>"phase 2", with its name where it has one.</summary>
    public Line PhaseLabel(int phase)
    {
        Phase own = Converter.Phases[phase];
        return own.Name == own.Number.ToString(System.Globalization.CultureInfo.InvariantCulture)
            ? Line.Of($"phase {own.Number}")
            : Line.Of($"phase {own.Number} ({new Named(own.Name)})");
    }
}
