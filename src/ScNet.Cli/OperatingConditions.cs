using System.Globalization;
using Fractions;
using ScNet.SteadyState;

namespace ScNet.Cli;

/// <summary>The operating point of a command line, and the dead time in seconds, if there is any.</summary>
internal sealed record OperatingConditions(OperatingPoint Point, double? DeadTimeSeconds)
{
    // a shorter share of the period is lost in the rounding of the rest
    private const double SmallestFraction = 1e-12;

    // with dead time a converter has twice as many phases, and 1000 at most
    private const int MaximumPhases = 500;

    /// <summary>The converter with its dead time, or null where that does not fit its phases; the reason goes to <paramref name="error"/>.</summary>
    public Converter? Apply(Converter converter, string path, TextWriter error)
    {
        if (DeadTimeSeconds is not { } seconds)
        {
            return converter;
        }

        double fraction = seconds * Point.FrequencyHz;
        Phase shortest = converter.Phases.MinBy(p => p.Duty)!;
        double longest = shortest.Duty.ToDouble();
        if (fraction >= SmallestFraction && fraction < longest && converter.Phases.Count <= MaximumPhases)
        {
            // a decimal holds the digits that were written: 1e-8 s at 1e6 Hz is exactly 1/100
            Fraction exact = Fraction.FromDecimal((decimal)fraction);
            if (exact < shortest.Duty)
            {
                return converter.WithDeadTime(exact);
            }
        }

        string limit = converter.Phases.Count > MaximumPhases
            ? string.Create(CultureInfo.InvariantCulture, $"a converter of at most {MaximumPhases} phases, but it has {converter.Phases.Count}")
            : $"less than the {Seconds(longest / Point.FrequencyHz)} of phase {shortest} (and at least {Seconds(SmallestFraction / Point.FrequencyHz)}), but got {Seconds(seconds)}";
        error.WriteLine(Printable.Of($"{path}: Expected, for --dead-time, {limit}."));
        return null;
    }

    private static string Seconds(double value) => EngineeringNumber.Of(value, "s");
}
