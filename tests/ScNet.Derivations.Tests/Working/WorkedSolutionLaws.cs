using CsCheck;
using Fractions;
using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using ScNet.Analysis;
using ScNet.Derivations.Expressions;
using ScNet.Derivations.Working;
using ScNet.Kernel;
using Block = ScNet.Derivations.Working.Block;
using Table = Markdig.Extensions.Tables.Table;

namespace ScNet.Derivations.Tests.Working;

/// <summary>On random networks every equation that is shown holds, and the documents are sound.</summary>
[Trait("Kind", "Law")]
public sealed class WorkedSolutionLaws
{
    private static readonly MarkdownPipeline s_markdown = new MarkdownPipelineBuilder().UsePipeTables().Build();

    // characters that mean something in Markdown, LaTeX or XML
    private static readonly Gen<string> s_name = Gen.String[Gen.Char["ab1 |`*_\\<>&#${}[]~^%'\"\n-é"], 1, 6];

    [Fact]
    public void Every_equation_of_voltages_and_charges_holds_exactly() =>
        RandomNetworks.Any.Holds(sketch =>
        {
            Converter converter = sketch.Build();
            WorkedMode mode = new(converter, converter.Modes[0]);
            if (mode.Outcome.HasResult)
            {
                Dictionary<Symbol, Fraction> values = Values(mode);
                Block[] blocks = [.. converter.Phases.SelectMany(p => PhaseChapter.Write(mode, p.Number - 1)), .. VoltageChapter.Write(mode), .. ChargeChapter.Write(mode)];
                Derivations.Working.EquationRow[] rows = [.. blocks.OfType<Equations>().SelectMany(e => e.Rows)];
                Assert.True(rows.Length >= converter.Phases.Count);
                Assert.All(rows, row => Assert.Equal(Fraction.Zero, Value(row.Left - row.Right, values)));
            }
        });

    [Fact]
    public void The_conditions_that_component_values_enter_hold_with_the_amounts_shown() =>
        RandomNetworks.Any.Holds(sketch =>
        {
            Converter converter = sketch.Build();
            WorkedMode mode = new(converter, converter.Modes[0]);
            if (mode.Outcome.HasResult && mode.Analysis.Topology.Directions.Count > 0)
            {
                Equations[] conditions = [.. DirectionChapter.Write(mode).OfType<Equations>()];
                double[] fast = DirectionAmounts.Fast(converter, mode.Analysis.Topology);
                Check(mode, conditions[^1], fast);
                if (conditions.Length > 1)
                {
                    Check(mode, conditions[0], DirectionAmounts.Slow(converter, mode.Analysis.Topology));
                }
            }
        });

    [Fact]
    public void Documents_are_sound_whatever_the_network_and_the_names_are() =>
        Gen.Select(RandomNetworks.Any, s_name.Array[16]).Holds((sketch, names) =>
        {
            Converter converter = Rename(sketch.Build(), names);
            WorkedSolution solution = WorkedSolution.Of(converter, converter.Modes[0]);
            string markdown = solution.ToMarkdown();
            CheckMarkdown(markdown, solution.HasResult);
            CheckLatex(solution.ToLatex());
            Assert.Equal(markdown, WorkedSolution.Of(converter, converter.Modes[0]).ToMarkdown());
            Assert.DoesNotContain("NaN", markdown, StringComparison.Ordinal);
        },
        count: 40);

    private static void CheckMarkdown(string text, bool hasResult)
    {
        MarkdownDocument document = Markdown.Parse(text, s_markdown);
        Assert.Empty(document.Descendants<HtmlBlock>());
        Assert.Empty(document.Descendants<HtmlInline>());
        Assert.Empty(document.Descendants<EmphasisInline>());
        Assert.Empty(document.Descendants<LinkInline>());
        Assert.Single(document.Descendants<HeadingBlock>(), h => h.Level == 1);
        Assert.Equal(!hasResult, document.Descendants<HeadingBlock>().Any(h => h.Inline!.FirstChild!.ToString() == "Where it fails"));
        Assert.All(document.Descendants<FencedCodeBlock>(), b => Assert.True(b.ClosingFencedCharCount > 0));
        int separators = text.Split('\n').Count(l => l.StartsWith("| --- |", StringComparison.Ordinal));
        Table[] tables = [.. document.Descendants<Table>()];
        Assert.Equal(separators, tables.Length);
        Assert.All(tables, t => Assert.All(t.OfType<TableRow>(), r => Assert.Equal(((TableRow)t[0]).Count, r.Count)));
        Assert.DoesNotContain('\r', text);
    }

    private static void CheckLatex(string text)
    {
        Stack<string> open = [];
        foreach (System.Text.RegularExpressions.Match match in System.Text.RegularExpressions.Regex.Matches(text, @"\\(begin|end)\{([a-z*]+)\}"))
        {
            if (match.Groups[1].Value == "begin")
            {
                open.Push(match.Groups[2].Value);
            }
            else
            {
                Assert.Equal(open.Pop(), match.Groups[2].Value);
            }
        }

        Assert.Empty(open);
        string bare = System.Text.RegularExpressions.Regex.Replace(text, @"\\.", string.Empty);
        Assert.Equal(bare.Count(c => c == '{'), bare.Count(c => c == '}'));
        Assert.Equal(0, bare.Count(c => c == '$') % 2);
        Assert.DoesNotContain('#', bare);
        Assert.DoesNotContain('%', bare);
        Assert.DoesNotContain('~', bare);
    }

    private static void Check(WorkedMode mode, Equations conditions, double[] amounts)
    {
        SwitchedNetwork network = mode.Converter.Network;
        TopologySolution exact = mode.Analysis.Topology;
        Dictionary<string, double> values = ClosedForms.Of(mode.Analysis).ComponentValues();
        for (int j = 0; j < network.PhaseCount; j++)
        {
            for (int c = 0; c < network.CapacitorCount; c++)
            {
                Set(mode.Converter.Capacitors[c].Name, (c * network.PhaseCount) + j, exact.Branches, d => d.Branches);
            }

            for (int s = 0; s < network.SwitchCount; s++)
            {
                Set(mode.Converter.Switches[s].Name, (s * network.PhaseCount) + j, exact.Switches, d => d.Switches);
            }

            void Set(string name, int entry, Quantity[] particular, Func<FlowDirection, ScNet.Numerics.SparseVector> part) =>
                values[new Symbol(SymbolKind.ElementCharge, name, j + 1).Name] =
                    particular[entry].ToDouble() + exact.Directions.Select((d, k) => amounts[k] * part(d)[entry]).Sum();
        }

        Assert.All(conditions.Rows, row =>
        {
            double size = row.Left.Terms.Sum(t => Math.Abs(t.Coefficient.ToDouble())) * 16;
            Assert.Equal(0, row.Left.Evaluate(values), 1e-9 * (1 + size));
        });
    }

    private static Dictionary<Symbol, Fraction> Values(WorkedMode mode)
    {
        Converter converter = mode.Converter;
        SwitchedNetwork network = converter.Network;
        Dictionary<Symbol, Fraction> values = [];

        // a voltage that nothing fixes may be anything; the equations must hold with zero too
        Rational<System.Numerics.BigInteger>[] voltages = mode.Solution!.Voltages();
        for (int b = 0; b < network.BranchCount; b++)
        {
            values[mode.Voltage(b).Symbols[0]] = WorkedMode.Exact(voltages[b]);
        }

        int output = converter.Nodes.PositionOf(converter.OutputNode);
        for (int j = 0; j < network.PhaseCount; j++)
        {
            if (mode.Analysis.IdealPoint.NodePotentials[output][j + 1].TryGetFraction(out Fraction potential))
            {
                values[new Symbol(SymbolKind.NodePotential, converter.OutputNode, j + 1)] = potential;
            }

            for (int b = 0; b < network.BranchCount; b++)
            {
                Fraction charge = mode.Analysis.Topology.Branches[(b * network.PhaseCount) + j].ToFraction();
                values[mode.Charge(b, j).Symbols[0]] = b == network.InputBranch ? -charge : charge;
            }

            for (int s = 0; s < network.SwitchCount; s++)
            {
                values[new Symbol(SymbolKind.ElementCharge, converter.Switches[s].Name, j + 1)] =
                    mode.Analysis.Topology.Switches[(s * network.PhaseCount) + j].ToFraction();
            }
        }

        Rational<System.Numerics.BigInteger>[] loops = mode.Solution!.LoopCharges();
        for (int l = 0; l < loops.Length; l++)
        {
            values[new Symbol(SymbolKind.LoopCharge, $"{l + 1}")] = WorkedMode.Exact(loops[l]);
        }

        return values;
    }

    private static Fraction Value(Expression sum, Dictionary<Symbol, Fraction> values) => sum.Terms.Aggregate(
        Fraction.Zero, (total, t) => total + t.Factors.Aggregate(t.Coefficient, (product, f) => product * values[f.Symbol])).Reduce();

    private static Converter Rename(Converter converter, string[] names)
    {
        string Node(string node) => node == Converter.ReferenceNode ? node : names[converter.Nodes.PositionOf(node) % names.Length] + node;
        ConverterBuilder builder = Converter.Create(names[0]).Input(Node(converter.InputNode)).Output(Node(converter.OutputNode), converter.Load)
            .Duties([.. converter.Phases.Select(p => p.Duty)]);
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            Capacitor own = converter.Capacitors[c];
            builder.Capacitor(names[c % names.Length] + own.Name, Node(own.PositiveNode), Node(own.BottomNode), own.Farads, own.EsrOhms);
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Switch own = converter.Switches[s];
            builder.Switch(own.Name + names[s % names.Length], Node(own.FirstNode), Node(own.SecondNode), converter.Modes[0].ClosedPhases[s], own.Ohms);
        }

        return builder.Build();
    }
}
