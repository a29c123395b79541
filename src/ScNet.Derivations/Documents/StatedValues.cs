using System.Numerics;
using Fractions;
using ScNet.Netlists.Toml;
using Tomlyn.Syntax;

namespace ScNet.Derivations.Documents;

/// <summary>Reads values as they stand on paper: whole numbers, decimals, and fractions or "?" in quotation marks.</summary>
internal sealed class StatedValues(TomlValues values, DiagnosticList findings)
{
    private const string Expected = "a number, a fraction such as \"1/3\", or \"?\"";

    /// <summary>One value; null where it was reported.</summary>
    public StatedValue? One(TomlEntry entry, ValueSyntax? value, string what, string[] elements)
    {
        try
        {
            switch (value)
            {
                case IntegerValueSyntax whole:
                    return StatedValue.FromFraction(new Fraction(new BigInteger(whole.Value)));
                case FloatValueSyntax real when double.IsFinite(real.Value):
                    return StatedValue.FromDouble(real.Value);
                case StringValueSyntax text when StatedValue.TryRead(TomlValues.TextOf(text, findings).Trim(), out Quantity quantity):
                    return StatedValue.FromQuantity(quantity);
                default:
                    values.Wrong(Expected, entry, value, what, elements);
                    return null;
            }
        }
        catch (ArgumentOutOfRangeException)
        {
            findings.Error(DiagnosticCodes.ValueOutOfRange, $"Expected a magnitude of 1e100 at most for {what}.", TomlValues.PositionOf(value!, findings), elements);
            return null;
        }
    }

    /// <summary>Values by phase from 1: all of them in an array, or some in braces by number or name; null where one was reported.</summary>
    public List<(int Phase, StatedValue Value)>? ByPhase(TomlEntry entry, string what, string[] elements, NamedList<Phase> phases)
    {
        List<(int, StatedValue)> found = [];
        if (entry.IsTable)
        {
            foreach (TomlEntry one in entry.Entries)
            {
                if (PhaseOf(one.Key, phases) is not { } number)
                {
                    findings.Error(
                        DiagnosticCodes.UnknownPhase,
                        $"There is no phase {Quoted.Name(one.Key)} for {what}. The phases are {string.Join(", ", phases.Select(p => $"{p.Number}{(p.Name == $"{p.Number}" ? string.Empty : $" ({Quoted.Plain(p.Name)})")}"))}.",
                        one.Position, elements);
                }
                else if (One(one, one.Value, $"{what} in phase {Quoted.Plain(one.Key)}", elements) is { } value)
                {
                    found.Add((number, value));
                }
            }

            return found;
        }

        if (entry.Value is not ArraySyntax array)
        {
            values.Wrong($"an array with one value for each of the {phases.Count} phases, or a table such as {{ 1 = \"1/3\" }},", entry, entry.Value, what, elements);
            return null;
        }

        ValueSyntax?[] items = [.. array.Items.Select(i => i.Value)];
        if (items.Length != phases.Count)
        {
            findings.Error(
                DiagnosticCodes.WrongValue, $"Expected {phases.Count} values for {what}, one for each phase, but got {items.Length}.", TomlValues.PositionOf(array, findings), elements);
            return null;
        }

        for (int j = 0; j < items.Length; j++)
        {
            if (One(entry, items[j], FormattableString.Invariant($"{what} in phase {j + 1}"), elements) is { } value)
            {
                found.Add((j + 1, value));
            }
        }

        return found;
    }

    private static int? PhaseOf(string key, NamedList<Phase> phases) =>
        phases.FirstOrDefault(p => p.Name == key)?.Number
        ?? (int.TryParse(key, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int number) && number >= 1 && number <= phases.Count ? number : null);
}
