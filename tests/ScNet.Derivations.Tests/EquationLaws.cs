using CsCheck;
using Fractions;
using ScNet.Analysis;
using ScNet.Derivations.Checking;

namespace ScNet.Derivations.Tests;

/// <summary>The equations behind a check, and its contradictions, on networks drawn at random.</summary>
[Trait("Kind", "Law")]
public sealed class EquationLaws
{
    [Fact]
    public void What_the_analysis_finds_satisfies_every_equation() => LawSample.Check(
        (_, analysis) =>
        {
            EquationSet set = Equations(analysis);
            Truth truth = new(analysis);
            foreach (Equation equation in set.All)
            {
                Quantity residual = Workbench.Residual(equation, u => truth.Of(set.Unknowns.At(u)));
                if (truth.HasExactFlow && residual.IsDetermined)
                {
                    Assert.True(residual == Quantity.Zero, $"{new EquationText(set).Name(equation)} leaves {residual}.");
                }
            }
        },
        iterations: 400);

    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void A_wrong_value_breaks_an_equation_and_is_in_a_contradiction_that_loses_it_with_any_member(LoadKind load)
    {
        int found = 0;
        Gen.Select(ConsistentNetworks.Gen(load), Gen.Int[0, 1 << 20]).Holds(
            (sample, draw) =>
            {
                if (ModeAnalysis.Try(sample.Converter, sample.Converter.Modes[0]).Analysis is not { } analysis)
                {
                    return;
                }

                DerivationReport report = OneWrongOfSome(analysis, new Random(draw)).Check();
                foreach (Finding finding in report.Wrong.Where(f => f.Derived.IsExact && f.Statement.Kind < StatementKind.PeakBlockingVoltage))
                {
                    Conflict? conflict = finding.Conflict;
                    if (conflict is null)
                    {
                        // only where flows of both limits are mixed no law ties the value
                        Assert.False(new Truth(analysis).HasExactFlow, $"{finding} has no contradiction.");
                        continue;
                    }

                    Interlocked.Increment(ref found);
                    AssertMinimal(analysis.Converter, finding, conflict);
                }
            },
            count: 500,
            print: s => $"{s.Item1} {s.Item2}");
        Assert.True(found > 60, $"only {found} contradictions");
    }

    [Fact]
    public void Whatever_is_stated_of_whatever_network_the_check_answers()
    {
        int answered = 0;
        Gen.Select(RandomNetworks.Any, Gen.Int[0, 1 << 20]).Holds(
            (sketch, draw) =>
            {
                DerivationReport report = Anything(sketch.Build(), new Random(draw)).Check();
                string text = report.ToString();
                Assert.False(string.IsNullOrEmpty(text));
                Assert.All(report.Findings, f => Assert.True(f.Verdict == Verdict.Right || !report.IsRight));
                Assert.All(report.Slips, s => Assert.NotEmpty(s.Explains));
                Interlocked.Increment(ref answered);
            },
            count: 400,
            print: s => $"{s.Item1} {s.Item2}");
        Assert.Equal(LawCheck.Total(400), answered);
    }

    [Fact]
    public void Where_little_is_stated_the_contradiction_is_a_chain_of_laws_none_of_which_can_be_left_out()
    {
        Random random = new(5);
        int chains = 0;
        foreach ((string family, int size) in Restated.Families.SelectMany(f => Enumerable.Range(2, 12).Select(n => (f, 2 + (n % 4)))))
        {
            Derivation right = Restated.Published(Restated.Facts(family, size), random.Next(2) == 0);
            Statement[] linear = [.. right.Statements.Where(s => s.Kind < StatementKind.PeakBlockingVoltage)];
            Statement wrong = linear[random.Next(linear.Length)];
            Derivation few = Restated.With(right, s =>
                s == wrong ? (StatedValue)(s.Value.Value.ToFraction() + new Fraction(1, 7))
                : linear.Contains(s) && random.Next(6) == 0 ? s.Value : (StatedValue?)null);
            Finding finding = Assert.Single(few.Check().Wrong);
            Assert.NotNull(finding.Conflict);
            chains += finding.Conflict.Laws.Count > 1 ? 1 : 0;
            AssertMinimal(right.Converter, finding, finding.Conflict);
        }

        Assert.True(chains >= 15, $"only {chains} chains");
    }

    private static Derivation OneWrongOfSome(ModeAnalysis analysis, Random random)
    {
        Derivation derivation = Derivation.Of(analysis);
        int wrong = random.Next(analysis.Converter.Capacitors.Count);
        for (int c = 0; c < analysis.Converter.Capacitors.Count; c++)
        {
            string name = analysis.Converter.Capacitors[c].Name;
            for (int j = 0; j < analysis.Converter.Phases.Count; j++)
            {
                Quantity charge = analysis.ChargeFlow.Capacitors[c][j + 1];
                if (charge.IsExact && (random.Next(3) > 0 || c == wrong))
                {
                    derivation = derivation.CapacitorInPhase(name, j + 1, c == wrong && j == 0 ? charge.ToFraction() + new Fraction(1, 7) : charge);
                }
            }

            Quantity voltage = analysis.IdealPoint.CapacitorVoltages[c];
            if (voltage.IsExact)
            {
                derivation = derivation.CapacitorVoltage(name, c == wrong ? voltage.ToFraction() - new Fraction(1, 5) : voltage);
            }
        }

        return random.Next(2) == 0 ? derivation.Ratio(analysis.Ratio) : derivation;
    }

    private static Derivation Anything(Converter converter, Random random)
    {
        Derivation derivation = Derivation.Of(converter).Ratio(Value()).Input(Values()).Output(Values());
        foreach (Capacitor c in converter.Capacitors.Where(_ => random.Next(4) > 0))
        {
            derivation = derivation.Capacitor(c.Name, Values()).CapacitorVoltage(c.Name, Value()).SlowCoefficient(c.Name, Value()).FastCoefficient(c.Name, Value());
        }

        foreach (Switch s in converter.Switches.Where(_ => random.Next(4) > 0))
        {
            derivation = derivation.Switch(s.Name, Values()).Blocking(s.Name, Values()).PeakBlocking(s.Name, Value()).FastCoefficient(s.Name, Value());
        }

        return derivation;

        StatedValue[] Values() => [.. converter.Phases.Select(_ => Value())];

        StatedValue Value() => random.Next(8) switch
        {
            0 => "?",
            1 => random.NextDouble() - 0.5,
            2 => 1e100,
            3 => new Fraction(System.Numerics.BigInteger.Pow(7, random.Next(1, 90)), System.Numerics.BigInteger.Pow(10, random.Next(1, 90))),
            _ => new Fraction(random.Next(-3, 4), random.Next(1, 5)),
        };
    }

    // By dense elimination of the members as written down: contradictory together, and consistent without any one.
    private static void AssertMinimal(Converter converter, Finding finding, Conflict conflict)
    {
        Unknowns unknowns = new(converter);
        List<((int Unknown, Fraction Coefficient)[] Terms, Fraction Constant)> members =
        [
            .. conflict.Statements.Select(s => (new[] { (unknowns.Of(s.Subject), Fraction.One) }, s.Value.Value.ToFraction())),
            .. conflict.Laws.Select(l => (l.Terms, l.Constant)),
        ];
        Assert.Contains(finding.Statement, conflict.Statements);
        Assert.Equal(conflict.Equations.Count, conflict.Laws.Count);
        Assert.False(ConsistentRows.AreConsistent(members), $"{conflict} is no contradiction.");
        for (int k = 0; k < members.Count; k++)
        {
            Assert.True(ConsistentRows.AreConsistent([.. members.Where((_, i) => i != k)]), $"{conflict} does not need member {k}.");
        }
    }

    private static EquationSet Equations(ModeAnalysis analysis) => EquationSet.Of(
        analysis,
        Enumerable.Range(0, analysis.Converter.Switches.Count)
            .SelectMany(s => Enumerable.Range(0, analysis.Converter.Phases.Count).Select(j => (s, j))));
}
