using System.Numerics;
using Fractions;

namespace ScNet.Topologies;

/// <summary>
/// What the families share. Each is one network between a high and a low node: stepping down, the high
/// node is the input; stepping up, the low one is. All elements have the same values.
/// </summary>
internal sealed class FamilyFrame
{
    /// <summary>The most cells, stages, levels or whole ratio of a family: about as many elements as a document holds.</summary>
    public const int MostCells = 100_000;

    private const string Input = "vin";
    private const string Output = "vout";

    private readonly ConverterBuilder _builder;
    private readonly double _farads;
    private readonly double _ohms;
    private readonly double _henries;
    private readonly double _windingOhms;
    private readonly LoadKind _load;

    public FamilyFrame(string name, bool stepUp, double farads, double ohms, LoadKind load, double henries = 1, double windingOhms = 0)
    {
        RequirePositive(farads, nameof(farads));
        RequirePositive(ohms, nameof(ohms));
        RequirePositive(henries, nameof(henries));
        _ = Guard.InRange(windingOhms, allowZero: true, nameof(windingOhms));
        if (!Enum.IsDefined(load))
        {
            throw new ArgumentOutOfRangeException(nameof(load), load, "Expected a load kind that exists.");
        }

        _builder = Converter.Create(name).Input(Input).Output(Output, load);
        _farads = farads;
        _ohms = ohms;
        _henries = henries;
        _windingOhms = windingOhms;
        _load = load;
        High = stepUp ? Output : Input;
        Low = stepUp ? Input : Output;
    }

    /// <summary>The node of the higher voltage: the input stepping down, the output stepping up.</summary>
    public string High { get; }

    /// <summary>The node of the lower voltage: the output stepping down, the input stepping up.</summary>
    public string Low { get; }

    public void Capacitor(string name, string positive, string bottom) =>
        _builder.Capacitor(name, positive, bottom, _farads);

    public void Inductor(string name, string first, string second) =>
        _builder.Inductor(name, first, second, _henries, _windingOhms);

    /// <summary>A switch whose first terminal is the one at the higher potential while it is open, where there is one.</summary>
    public void Switch(string name, string upper, string lower, PhaseSet phase) =>
        _builder.Switch(name, upper, lower, phase, _ohms);

    /// <summary>A number of equal phases; two where this is not called.</summary>
    public void Phases(int count) => _builder.Phases(count);

    /// <summary>Phases of the given shares of the period.</summary>
    public void Duties(IEnumerable<Fraction> duties) => _builder.Duties([.. duties]);

    /// <summary>Requires a duty between two bounds, which it may not reach.</summary>
    public static void RequireDuty(Fraction duty, Fraction above, Fraction below, string parameterName)
    {
        if (duty.Denominator.IsZero || duty <= above || duty >= below)
        {
            throw new ArgumentOutOfRangeException(parameterName, duty, $"Expected a duty above {above} and below {below}.");
        }
    }

    /// <summary>A mode of a converter whose switches were given no phases.</summary>
    public void Mode(string name, IEnumerable<(string Switch, PhaseSet On)> closed) => _builder.Mode(name, [.. closed]);

    /// <summary>The converter; a load that does not hold the output gets an output capacitor, the last in the list.</summary>
    public Converter Build()
    {
        if (_load == LoadKind.Current)
        {
            Capacitor("out", Output, Converter.ReferenceNode);
        }

        return _builder.Build();
    }

    /// <summary>The name of a family member: "Ladder 3:1" stepping down, "Ladder 1:3" stepping up.</summary>
    public static string Name(string family, int ratio, bool stepUp) =>
        stepUp ? $"{family} 1:{ratio}" : $"{family} {ratio}:1";

    /// <summary>Numerator and denominator of a positive ratio without their common factors.</summary>
    public static (int Numerator, int Denominator) LowestTerms(int numerator, int denominator)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(numerator, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(denominator, 1);
        int divisor = (int)BigInteger.GreatestCommonDivisor(numerator, denominator);
        return (numerator / divisor, denominator / divisor);
    }

    /// <summary>A ratio in lowest terms: "2/3", or "2" where it is whole.</summary>
    public static string Ratio(long numerator, long denominator)
    {
        long divisor = (long)BigInteger.GreatestCommonDivisor(numerator, denominator);
        return divisor == denominator
            ? $"{numerator / divisor}"
            : $"{numerator / divisor}/{denominator / divisor}";
    }

    private static void RequirePositive(double value, string parameterName)
    {
        if (!Guard.IsInRange(value, allowZero: false))
        {
            throw new ArgumentOutOfRangeException(parameterName, value, "Expected a finite, positive value.");
        }
    }
}
