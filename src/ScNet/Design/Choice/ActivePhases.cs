using Fractions;

namespace ScNet.Design.Choice;

/// <summary>The duty of a stage that a netlist describes: the odd phases are the active ones, each followed by one of rest.</summary>
internal static class ActivePhases
{
    /// <summary>The same stage with its odd phases as long as the duty, in the proportions that they have, and its even phases likewise for the rest.</summary>
    public static Converter Scaled(Converter converter, Fraction duty)
    {
        if (duty <= Fraction.Zero || duty >= Fraction.One)
        {
            throw new ArgumentOutOfRangeException(nameof(duty), duty, "Expected a duty above 0 and below 1.");
        }

        Fraction active = Share(converter);
        return converter.WithDuties([.. converter.Phases.Select(p =>
            p.Number % 2 == 1 ? p.Duty * duty / active : p.Duty * (Fraction.One - duty) / (Fraction.One - active))]);
    }

    /// <summary>The share of the odd phases.</summary>
    public static Fraction Share(Converter converter) =>
        converter.Phases.Where(p => p.Number % 2 == 1).Aggregate(Fraction.Zero, (sum, p) => sum + p.Duty);
}
