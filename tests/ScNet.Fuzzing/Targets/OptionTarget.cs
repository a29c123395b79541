using System.CommandLine;
using System.Globalization;
using Fractions;
using ScNet.Cli.Commands;
using ScNet.Derivations;
using ScNet.Search;
using ScNet.Search.Shards;
using ScNet.Topologies;

namespace ScNet.Fuzzing.Targets;

/// <summary>Texts of options: the first sign chooses which; what is accepted reads the same from its own text.</summary>
internal static class OptionTarget
{
    private const string Name = "--value";

    // a decimal with a large exponent has a fraction that is too long to be read again
    private const int MaximumPrinted = 64;

    private static readonly Action<string>[] s_readers =
    [
        Of(FractionOptions.Range(Name, "A ratio"), r => $"{Text(r.Minimum!.Value)}..{Text(r.Maximum!.Value)}", r => true),
        Of(FractionOptions.Share(Name, "A share"), s => Text(s!.Value), s => s!.Value.IsPositive),
        Of(VoltageRange.Input(), r => $"{Text(r.Minimum!.Value)}..{Text(r.Maximum!.Value)}", r => r.Minimum > 0),
        Values,
        Shard,
        Code,
        Family,
        Of(SharedOptions.SignedNumber(Name, "N", "volts (V)", "A number"), Text, double.IsFinite),
        Of(NumberOptions.Whole(Name, "A number", -5, 1000, 1), n => n.ToString(CultureInfo.InvariantCulture), n => n is >= -5 and <= 1000),
        Of(NumberOptions.Fraction(Name, "A fraction", "0.1", 0), Text, f => f is >= 0 and < 1),
        Stated,
    ];

    public static void Try(byte[] bytes)
    {
        string text = TextInput.Of(bytes);
        if (text.Length > 0)
        {
            // '0' is the first, '9' the tenth and ':' the one after it
            s_readers[(text[0] + (s_readers.Length * '0') - '0') % s_readers.Length](text[1..]);
        }
    }

    private static Action<string> Of<T>(Option<T> option, Func<T, string> print, Func<T, bool> isInRange)
    {
        Command command = new("fuzz") { option };
        ParserConfiguration plain = new() { ResponseFileTokenReplacer = null };
        return text =>
        {
            ParseResult parsed = command.Parse([option.Name, text], plain);
            if (parsed.Errors.Count > 0)
            {
                return;
            }

            T value = parsed.GetValue(option)!;
            Property.Holds(isInRange(value), $"a value in its range, but '{text}' gave {value}");
            string printed = print(value);
            if (printed.Length <= MaximumPrinted)
            {
                ParseResult again = command.Parse([option.Name, printed], plain);
                Property.Holds(again.Errors.Count == 0, $"to read '{printed}', but got {string.Join('\n', again.Errors)}");
                Property.Same(printed, print(again.GetValue(option)!), "what was read and what was printed and read");
            }
        };
    }

    private static void Values(string text)
    {
        List<string> errors = [];
        Fraction[] values = ValueList.Parse(text, "positive numbers", v => v.IsPositive, errors.Add);
        if (errors.Count == 0)
        {
            Property.Holds(values.Length > 0 && values.All(v => v.IsPositive), "positive values");
        }
    }

    private static void Shard(string text)
    {
        if (AtlasShard.TryParseFraction(text, out int number, out int count))
        {
            string printed = new AtlasShard(1, number, count).Fraction;
            Property.Holds(AtlasShard.TryParseFraction(printed, out int numberAgain, out int countAgain) && (number, count) == (numberAgain, countAgain), $"to read '{printed}'");
        }
    }

    private static void Code(string text)
    {
        try
        {
            Property.Same(text, Wiring.Parse(text).ToCode(), "the code that was read and the one that is written");
        }
        catch (FormatException)
        {
            // it is no code, as it says
        }
    }

    private static void Family(string text)
    {
        if (FamilyRequest.Read(text, out FamilyRequest? request) is null)
        {
            Property.Holds(FamilyRequest.Read(request!.ToString(), out FamilyRequest? again) is null, $"to read '{request}'");
            Property.Same(request.ToString(), again!.ToString(), "the family that was read and the one that was printed and read");
        }
    }

    private static void Stated(string text)
    {
        StatedValue value;
        try
        {
            value = StatedValue.FromString(text);
        }
        catch (ArgumentException)
        {
            return;
        }

        Property.Holds(StatedValue.FromString(value.ToString()) == value, $"to read '{value}' as it was written");
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string Text(Fraction value)
    {
        Fraction reduced = value.Reduce();
        return string.Create(CultureInfo.InvariantCulture, $"{reduced.Numerator}/{reduced.Denominator}");
    }
}
