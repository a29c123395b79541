using Fractions;

namespace ScNet.Derivations.Checking;

/// <summary>Slips of a whole group of values: conventions and normalisations.</summary>
internal static class WideSlips
{
    private const int MaximumPhasePairs = 8;
    private const string MixedGroup = "charges and coefficients";

    // wider groups first
    private static readonly (string Name, Func<Statement, bool> Holds)[] s_groups =
    [
        (MixedGroup, s => SlipValues.IsCharge(s) || SlipValues.IsCoefficient(s)),
        ("charges", SlipValues.IsCharge),
        ("charges of capacitors and switches", s => s.Kind is StatementKind.CapacitorCharge or StatementKind.SwitchCharge),
        ("charges of capacitors", s => s.Kind == StatementKind.CapacitorCharge),
        ("charges of switches", s => s.Kind == StatementKind.SwitchCharge),
        ("coefficients", SlipValues.IsCoefficient),
        ("slow coefficients", s => s.Kind == StatementKind.SlowCoefficient),
        ("fast coefficients", s => s.Kind == StatementKind.FastCoefficient),
        ("voltages", SlipValues.IsVoltage),
        ("voltages of capacitors", s => s.Kind == StatementKind.CapacitorVoltage),
        ("blocking voltages", s => s.Kind is StatementKind.BlockingVoltage or StatementKind.PeakBlockingVoltage),
    ];

    public static IEnumerable<SlipHypothesis> Of(Workbench bench, SlipValues values)
    {
        int phases = bench.Scope.Converter.Phases.Count;
        List<SlipHypothesis> found = [];
        foreach ((string name, IReadOnlyList<Statement> scope) in Scopes(bench))
        {
            Add(SlipKind.PerInputCharge, 12, $"{name} per unit of input charge instead of output charge", scope, values.PerInput);
            Add(SlipKind.PerInputCharge, 13, $"{name} per unit of input charge and with flipped signs", scope, values.NegatedPerInput);
            if (name == MixedGroup)
            {
                continue;
            }

            Add(SlipKind.SignsFlipped, 10, $"signs of all {name} flipped", scope, values.Negated);
            Add(SlipKind.PerOutputVoltage, 14, $"{name} per volt of output instead of input", scope, values.PerOutput);
            AddFactors(name, scope);
            Add(SlipKind.SignsDropped, 16, $"signs of all {name} dropped", scope, values.Magnitude);
            Add(SlipKind.NotSquared, 17, $"charges not squared in all {name}", Coefficients(scope), values.NotSquared);
            Add(SlipKind.DutyForgotten, 17, $"{name} not divided by the duties", Coefficients(scope), values.DutyForgotten);
            for (int j = 1; j <= phases && name != "voltages of capacitors"; j++)
            {
                Add(SlipKind.SignsFlipped, 18, $"signs of all {name} in phase {j} flipped", [.. scope.Where(s => s.Phase == j)], values.Negated);
            }
        }

        if (values.WithEqualParts is { } equal)
        {
            Add(SlipKind.EqualParts, 9, "as if all capacitors and all switches were equal", [.. bench.Statements.Where(s => SlipValues.IsCharge(s) || SlipValues.IsCoefficient(s))], equal);
        }

        Statement[] phased = [.. bench.Statements.Where(s => s.Phase is not null)];
        foreach ((string name, IReadOnlyList<Statement> scope) in Scopes(bench).Prepend(("values", phased)))
        {
            AddPhases(name, [.. scope.Where(s => s.Phase is not null)]);
        }

        return found;

        void Add(SlipKind kind, int rank, string description, IReadOnlyList<Statement> scope, Func<Statement, Quantity> value)
        {
            if (scope.Count > 1)
            {
                found.Add(new SlipHypothesis(kind, rank, description, scope, value, IsWide: true));
            }
        }

        void AddFactors(string name, IReadOnlyList<Statement> scope)
        {
            foreach ((Fraction factor, string words) in Factors)
            {
                Add(SlipKind.Factor, 15, $"{name} {words}", scope, values.Times(factor));
            }
        }

        void AddPhases(string name, IReadOnlyList<Statement> scope)
        {
            foreach ((int i, int k) in PhasePairs(phases))
            {
                Add(SlipKind.PhasesSwapped, 11, $"phases {i + 1} and {k + 1} of all {name} swapped", scope, values.OfPhase(j => j == i ? k : j == k ? i : j));
            }

            if (phases > 2)
            {
                Add(SlipKind.PhasesSwapped, 11, $"all {name} one phase too late", scope, values.OfPhase(j => (j + phases - 1) % phases));
                Add(SlipKind.PhasesSwapped, 11, $"all {name} one phase too early", scope, values.OfPhase(j => (j + 1) % phases));
            }
        }
    }

    /// <summary>Factors that are easily forgotten or used twice.</summary>
    internal static readonly (Fraction Factor, string Words)[] Factors =
    [
        (2, "too large by a factor of 2"),
        (new Fraction(1, 2), "too small by a factor of 2"),
        (4, "too large by a factor of 4"),
        (new Fraction(1, 4), "too small by a factor of 4"),
    ];

    /// <summary>Every pair of phases, of the first few.</summary>
    internal static IEnumerable<(int First, int Second)> PhasePairs(int phases)
    {
        int most = Math.Min(phases, MaximumPhasePairs);
        return Enumerable.Range(0, most).SelectMany(i => Enumerable.Range(i + 1, most - i - 1).Select(k => (i, k)));
    }

    private static Statement[] Coefficients(IReadOnlyList<Statement> scope) => scope.All(SlipValues.IsCoefficient) ? [.. scope] : [];

    // Of groups that hold the same statements, the one with the narrowest name.
    private static IEnumerable<(string Name, IReadOnlyList<Statement> Scope)> Scopes(Workbench bench)
    {
        (string Name, Statement[] Scope)[] groups = [.. s_groups.Select(g => (g.Name, bench.Statements.Where(g.Holds).ToArray()))];
        return groups
            .Where((group, k) => group.Scope.Length > 1 && !groups.Skip(k + 1).Any(narrower => narrower.Scope.SequenceEqual(group.Scope)))
            .Select(group => (group.Name, (IReadOnlyList<Statement>)group.Scope));
    }
}
