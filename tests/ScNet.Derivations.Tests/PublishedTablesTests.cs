namespace ScNet.Derivations.Tests;

/// <summary>The published tables of the families as derivations; their sources stand at the tests of the families.</summary>
public sealed class PublishedTablesTests
{
    public static TheoryData<string, int, bool> Cases
    {
        get
        {
            TheoryData<string, int, bool> cases = [];
            foreach (string family in Restated.Families)
            {
                foreach (int size in new[] { 1, 2, 3, 4, 5, 7, 10, 12 })
                {
                    cases.Add(family, size, false);
                    cases.Add(family, size, true);
                }
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_published_table_is_a_right_derivation(string family, int size, bool up)
    {
        FamilyFacts facts = Restated.Facts(family, size);
        Derivation derivation = Restated.Published(facts, up);
        DerivationReport report = derivation.Check();
        Assert.True(report.IsRight, report.ToString());
        Assert.Equal(5 + (4 * facts.Capacitors.Count) + (6 * facts.Switches.Count), report.Findings.Count);
        Assert.Equal($"{derivation.Converter.Name}: right, {report.Findings.Count} statements.", report.ToString());
        Assert.Empty(report.Slips);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void With_one_voltage_changed_it_is_wrong_in_that_one_alone(string family, int size, bool up)
    {
        Derivation right = Restated.Published(Restated.Facts(family, size), up);
        Statement changed = right.Statements.First(s => s.Kind == StatementKind.CapacitorVoltage);
        DerivationReport report = Restated.With(right, s => s == changed ? "17/19" : s.Value).Check();
        Assert.False(report.IsRight);
        Finding finding = Assert.Single(report.Wrong);
        Assert.Equal(changed.Description, finding.Statement.Description);
        Assert.Equal(changed.Value.Value, finding.Derived);
        Assert.Equal(changed.Value.Value, finding.IfOthersAreRight);
        Assert.NotNull(finding.BrokenEquation);
        Assert.Empty(finding.Slips);
        Assert.Contains(finding.Statement, finding.Conflict!.Statements);
    }
}
