using System.Globalization;
using Fractions;

namespace ScNet.SteadyState;

/// <summary>Dead time between phases, as a converter with more phases.</summary>
public static class DeadTime
{
    /// <summary>
    /// The same converter with an interval in which all switches are open after each phase, taken from
    /// that phase. Phase j becomes phase 2j - 1, the interval after it phase 2j. Names are kept; where phases
    /// have names, the interval is called "NAME, dead time".
    /// </summary>
    /// <param name="converter">The converter.</param>
    /// <param name="fractionOfPeriod">The length of each interval as a fraction of the period: dead time in seconds times the switching frequency in hertz.</param>
    /// <exception cref="ArgumentOutOfRangeException">The interval is not positive, or not shorter than the shortest phase.</exception>
    public static Converter WithDeadTime(this Converter converter, Fraction fractionOfPeriod)
    {
        ArgumentNullException.ThrowIfNull(converter);
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

        foreach (Capacitor capacitor in converter.Capacitors)
        {
            builder.Capacitor(capacitor.Name, capacitor.PositiveNode, capacitor.BottomNode, capacitor.Farads, capacitor.EsrOhms);
        }

        foreach (Switch @switch in converter.Switches)
        {
            builder.Switch(@switch.Name, @switch.FirstNode, @switch.SecondNode, ohms: @switch.Ohms);
        }

        foreach (Mode mode in converter.Modes)
        {
            builder.Mode(mode.Name, [.. converter.Switches.Select((s, i) =>
                (s.Name, PhaseSet.Of([.. mode.ClosedPhases[i].Select(p => (2 * p) - 1)])))]);
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
