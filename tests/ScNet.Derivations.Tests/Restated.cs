using Fractions;

namespace ScNet.Derivations.Tests;

/// <summary>Derivations made from published tables, and derivations stated again with other values.</summary>
internal static class Restated
{
    public static readonly string[] Families = ["series-parallel", "ladder", "dickson", "fibonacci", "doubler"];

    public static FamilyFacts Facts(string family, int size) => family switch
    {
        "series-parallel" => SeriesParallelFacts.Of(size, 2e-9, 3),
        "ladder" => LadderFacts.Of(size, 2e-9, 3),
        "dickson" => DicksonFacts.Of(size, 2e-9, 3),
        "fibonacci" => FibonacciFacts.Of(size, 2e-9, 3),
        _ => DoublerFacts.Of(size, 2e-9, 3),
    };

    /// <summary>Everything that the literature says of a member of a family.</summary>
    public static Derivation Published(FamilyFacts facts, bool up)
    {
        (Fraction charge, Fraction voltage, _) = facts.Scale(up);
        (Fraction First, Fraction Second) high = (facts.High.First * charge.Abs(), facts.High.Second * charge.Abs());
        (Fraction First, Fraction Second) low = (facts.Low.First * charge.Abs(), facts.Low.Second * charge.Abs());
        ((Fraction First, Fraction Second) input, (Fraction First, Fraction Second) output) = up ? (low, high) : (high, low);
        Derivation derivation = Derivation.Of(facts.Converter(up))
            .Ratio(up ? facts.N : 1 / facts.N).Input(input.First, input.Second).Output(output.First, output.Second);
        foreach ((string name, (Fraction a, Fraction v)) in facts.Capacitors)
        {
            Fraction q = a * charge;
            derivation = derivation.Capacitor(name, q, -q).CapacitorVoltage(name, v * voltage).SlowCoefficient(name, q * q);
        }

        foreach ((string name, (int closed, Fraction a, Fraction blocked)) in facts.Switches)
        {
            Fraction q = a * charge, v = blocked * voltage;
            derivation = derivation
                .Switch(name, closed == 1 ? [q, 0] : [0, q]).Blocking(name, closed == 1 ? [0, v] : [v, 0])
                .PeakBlocking(name, v).FastCoefficient(name, 2 * q * q);
        }

        return derivation;
    }

    /// <summary>The same statements with other values; those for which the map gives null are left out.</summary>
    public static Derivation With(Derivation derivation, Func<Statement, StatedValue?> map)
    {
        Derivation result = Derivation.Of(derivation.Converter, derivation.Mode.Name).WithTolerance(derivation.Tolerance);
        foreach (Statement statement in derivation.Statements)
        {
            if (map(statement) is { } value)
            {
                result = Add(result, statement, value);
            }
        }

        return result;
    }

    private static Derivation Add(Derivation d, Statement s, StatedValue v) => s.Kind switch
    {
        StatementKind.Ratio => d.Ratio(v),
        StatementKind.InputCharge => d.InputInPhase(s.Phase!.Value, v),
        StatementKind.OutputCharge => d.OutputInPhase(s.Phase!.Value, v),
        StatementKind.CapacitorCharge => d.CapacitorInPhase(s.Element!, s.Phase!.Value, v),
        StatementKind.SwitchCharge => d.SwitchInPhase(s.Element!, s.Phase!.Value, v),
        StatementKind.CapacitorVoltage => d.CapacitorVoltage(s.Element!, v),
        StatementKind.BlockingVoltage => d.BlockingInPhase(s.Element!, s.Phase!.Value, v),
        StatementKind.PeakBlockingVoltage => d.PeakBlocking(s.Element!, v),
        StatementKind.SlowCoefficient => d.SlowCoefficient(s.Element!, v),
        _ => d.FastCoefficient(s.Element!, v),
    };
}
