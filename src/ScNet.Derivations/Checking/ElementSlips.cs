using Fractions;

namespace ScNet.Derivations.Checking;

/// <summary>Slips of all values of one element.</summary>
internal static class ElementSlips
{
    public static IEnumerable<SlipHypothesis> Of(Workbench bench, SlipValues values, IReadOnlySet<Statement> wrong)
    {
        HashSet<(bool, int)> suspects = [.. wrong.Where(s => s.Element is not null).Select(Key)];
        foreach (IGrouping<(bool, int), Statement> element in bench.Statements.Where(s => s.Element is not null && suspects.Contains(Key(s))).GroupBy(Key))
        {
            string name = element.First().Element!;
            Statement[] all = [.. element];
            Statement[] charges = [.. all.Where(SlipValues.IsCharge)], voltages = [.. all.Where(SlipValues.IsVoltage)];
            foreach (SlipHypothesis hypothesis in Signs(name, all, charges, voltages, values)
                .Concat(Phases(bench, name, all, charges, voltages, values))
                .Concat(Scales(name, all, charges, voltages, values)))
            {
                yield return hypothesis;
            }
        }
    }

    private static (bool, int) Key(Statement s) => (s.Subject.IsCapacitor, s.Subject.Element);

    private static IEnumerable<SlipHypothesis> Signs(string name, Statement[] all, Statement[] charges, Statement[] voltages, SlipValues values)
    {
        yield return new(SlipKind.TerminalsReversed, 20, $"terminals of {name} reversed", [.. all.Where(s => !SlipValues.IsCoefficient(s))], values.Negated);
        if (charges.Length > 0 && voltages.Length > 0)
        {
            yield return new(SlipKind.SignsFlipped, 21, $"signs of the charges of {name} flipped", charges, values.Negated);
            yield return new(SlipKind.SignsFlipped, 21, $"signs of the voltages of {name} flipped", voltages, values.Negated);
        }
    }

    private static IEnumerable<SlipHypothesis> Phases(
        Workbench bench, string name, Statement[] all, Statement[] charges, Statement[] voltages, SlipValues values)
    {
        foreach ((int i, int k) in WideSlips.PhasePairs(bench.Scope.Converter.Phases.Count))
        {
            Func<Statement, Quantity> value = values.OfPhase(j => j == i ? k : j == k ? i : j);
            foreach (Statement[] scope in new[] { all, charges, voltages })
            {
                if (Array.Exists(scope, s => s.Phase == i + 1) && Array.Exists(scope, s => s.Phase == k + 1))
                {
                    yield return new(SlipKind.PhasesSwapped, 23, $"phases {i + 1} and {k + 1} of {name} swapped", scope, value);
                }
            }
        }
    }

    private static IEnumerable<SlipHypothesis> Scales(string name, Statement[] all, Statement[] charges, Statement[] voltages, SlipValues values)
    {
        yield return new(SlipKind.PerInputCharge, 24, $"{name} per unit of input charge instead of output charge", [.. all.Where(s => !SlipValues.IsVoltage(s))], values.PerInput);
        yield return new(SlipKind.PerInputCharge, 24, $"charges of {name} per unit of input charge instead of output charge", charges, values.PerInput);
        yield return new(SlipKind.PerOutputVoltage, 24, $"voltages of {name} per volt of output instead of input", voltages, values.PerOutput);
        foreach ((Fraction factor, string words) in WideSlips.Factors)
        {
            yield return new(SlipKind.Factor, 25, $"charges of {name} {words}", charges, values.Times(factor));
            yield return new(SlipKind.Factor, 25, $"voltages of {name} {words}", voltages, values.Times(factor));
        }
    }
}
