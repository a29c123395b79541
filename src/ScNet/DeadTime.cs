using System.Globalization;
using Fractions;

namespace ScNet;

/// <summary>Dead time between phases, as a converter with more phases.</summary>
internal static class DeadTime
{
    /// <inheritdoc cref="Converter.WithDeadTime"/>
    public static Converter Add(Converter converter, Fraction fractionOfPeriod)
    {
        if (fractionOfPeriod.Denominator.IsZero || fractionOfPeriod <= Fraction.Zero || converter.Phases.Any(p => p.Duty <= fractionOfPeriod))
        {
            throw new ArgumentOutOfRangeException(
                nameof(fractionOfPeriod), fractionOfPeriod, "Expected a dead time that is positive and shorter than the shortest phase.");
        }

        ConverterBuilder builder = Converter.Create(converter.Name)
            .Input(converter.InputNode)
            .Output(converter.OutputNode, converter.Load)
            .Duties([.. converter.Phases.SelectMany(p => new[] { p.Duty - fractionOfPeriod, fractionOfPeriod })]);
        if (Names(converter) is { Length: > 0 } names)
        {
            builder.PhaseNames(names);
        }

        builder.AddElements(converter, string.Empty, node => node);
        foreach (Mode mode in converter.Modes)
        {
            builder.Mode(mode.Name, [.. converter.Entries(mode, string.Empty, p => [(2 * p) - 1])]);
        }

        return builder.Build();
    }

    // None where the phases have only numbers, which would be wrong numbers now.
    private static string[] Names(Converter converter)
    {
        if (converter.Phases.All(p => p.Name == p.Number.ToString(CultureInfo.InvariantCulture)))
        {
            return [];
        }

        HashSet<string> taken = [.. converter.Phases.Select(p => p.Name)];
        return [.. converter.Phases.SelectMany(p =>
        {
            string interval = $"{p.Name}, dead time";
            while (!taken.Add(interval))
            {
                interval += "'";
            }

            return new[] { p.Name, interval };
        })];
    }
}
