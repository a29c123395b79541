using Fractions;
using Tomlyn.Syntax;

namespace ScNet.Netlists.Documents;

/// <summary>Reads single values and says, for one of another type, what was expected and what is there.</summary>
internal sealed class ValueReader(DocumentErrors errors)
{
    public DocumentErrors Errors => errors;

    /// <summary>A non-empty string, or null where it was reported.</summary>
    public string? Text(ValueSyntax? value, SourcePosition position, DocumentTable? table, string what, string[]? elements = null)
    {
        if (value is not StringValueSyntax { Value: { } text })
        {
            WrongType("a string", value, table, what, position, elements);
            return null;
        }

        if (text.Length == 0)
        {
            errors.Add(DiagnosticCodes.WrongValue, $"Expected a non-empty string for {what}, but got an empty one.", errors.PositionOf(value), elements);
            return null;
        }

        return text;
    }

    /// <summary>A string at the position of its value, or null where it was reported.</summary>
    public Declared<string>? Text(DocumentEntry entry, string what, string[]? elements = null) =>
        Text(entry.Value, entry.Position, entry.Table, what, elements) is { } text
            ? new Declared<string>(text, errors.PositionOf(entry.Value!))
            : null;

    /// <summary>A finite number, whole or not, or null where it was reported.</summary>
    public Declared<double>? Number(DocumentEntry entry, string what, string[] elements)
    {
        double number;
        switch (entry.Value)
        {
            case IntegerValueSyntax integer:
                number = integer.Value;
                break;
            case FloatValueSyntax real:
                number = real.Value;
                break;
            default:
                WrongType("a number", entry.Value, entry.Table, what, entry.Position, elements);
                return null;
        }

        SourcePosition position = errors.PositionOf(entry.Value);
        if (double.IsFinite(number))
        {
            return new Declared<double>(number, position);
        }

        errors.Add(DiagnosticCodes.ValueOutOfRange, $"Expected a finite number for {what}, but got {WrittenText(entry.Value)}.", position, elements);
        return null;
    }

    /// <summary>A number as the exact decimal written, or null where it was reported.</summary>
    public Declared<Fraction>? Exact(ValueSyntax? value, SourcePosition position, string what)
    {
        switch (value)
        {
            case IntegerValueSyntax integer:
                return new Declared<Fraction>(new Fraction(integer.Value), errors.PositionOf(value));
            case FloatValueSyntax real when double.IsFinite(real.Value):
                string text = real.Token?.Text?.Replace("_", string.Empty, StringComparison.Ordinal) ?? string.Empty;
                if (ExactDecimal.TryParse(text, out Fraction exact))
                {
                    return new Declared<Fraction>(exact, errors.PositionOf(value));
                }

                errors.Add(DiagnosticCodes.ValueOutOfRange, $"Expected a number of at most {ExactDecimal.MaximumLength} characters that a double can hold for {what}, but got {WrittenText(value)}.", errors.PositionOf(value));
                return null;
            case FloatValueSyntax:
                errors.Add(DiagnosticCodes.ValueOutOfRange, $"Expected a finite number for {what}, but got {WrittenText(value)}.", errors.PositionOf(value));
                return null;
            default:
                WrongType("a number", value, null, what, position, null);
                return null;
        }
    }

    public void WrongType(string expected, DocumentEntry entry, string what, string[]? elements = null) =>
        WrongType(expected, entry.Value, entry.Table, what, entry.Position, elements);

    public void WrongType(string expected, ValueSyntax? value, DocumentTable? table, string what, SourcePosition position, string[]? elements)
    {
        SourcePosition place = value is null ? position : errors.PositionOf(value);
        errors.Add(DiagnosticCodes.WrongValue, $"Expected {expected} for {what}, but got {Describe(value, table)}.", place, elements);
    }

    private static string Describe(ValueSyntax? value, DocumentTable? table) => value switch
    {
        null => table?.Form == TableForm.Array ? "an array of tables" : "a table",
        StringValueSyntax text => $"the string \"{Quoted.Plain(text.Value ?? string.Empty)}\"",
        IntegerValueSyntax or FloatValueSyntax => $"the number {WrittenText(value)}",
        BooleanValueSyntax boolean => boolean.Value ? "true" : "false",
        ArraySyntax array => array.Items.ChildrenCount == 0 ? "an empty array" : "an array",
        InlineTableSyntax => "a table",
        _ => "a date or time",
    };

    private static string WrittenText(ValueSyntax value) => Quoted.Plain(value switch
    {
        IntegerValueSyntax integer => integer.Token?.Text ?? string.Empty,
        FloatValueSyntax real => real.Token?.Text ?? string.Empty,
        _ => string.Empty,
    });
}
