using Fractions;
using Tomlyn.Syntax;

namespace ScNet.Netlists.Toml;

/// <summary>Reads single values and says, for one of another type, what was expected and what is there.</summary>
internal sealed class TomlValues(DiagnosticList findings)
{
    /// <summary>The place of a node of the syntax tree, counted from 1.</summary>
    public static SourcePosition PositionOf(SyntaxNodeBase node, DiagnosticList findings) =>
        new(findings.File, node.Span.Start.Line + 1, node.Span.Start.Column + 1);

    /// <summary>What a string says; an escape that only a later edition of TOML has is reported.</summary>
    public static string TextOf(StringValueSyntax text, DiagnosticList findings)
    {
        string written = text.Token?.Text ?? string.Empty;
        int at = written.StartsWith('"') ? written.IndexOf('\\', StringComparison.Ordinal) : -1;
        for (; at >= 0 && at + 1 < written.Length; at = written.IndexOf('\\', at + 2))
        {
            if (written[at + 1] is 'e' or 'x')
            {
                TextPosition start = text.Span.Start;
                int line = written.AsSpan(0, at).Count('\n');
                int column = line > 0 ? at - written.LastIndexOf('\n', at) : start.Column + 1 + at;
                findings.Error(DiagnosticCodes.Syntax, $"TOML 1.0 has no escape \\{written[at + 1]}. Write \\u and four hexadecimal digits.", new SourcePosition(findings.File, start.Line + 1 + line, column));
            }
        }

        return text.Value ?? string.Empty;
    }

    /// <summary>A non-empty string, or null where it was reported.</summary>
    /// <param name="entry">The entry in which the value stands, itself or in an array.</param>
    /// <param name="value">The value; null where the entry has a table.</param>
    /// <param name="what">What the value is.</param>
    /// <param name="elements">The element concerned.</param>
    public Declared<string>? Text(TomlEntry entry, ValueSyntax? value, string what, string[]? elements = null)
    {
        if (value is not StringValueSyntax written)
        {
            Wrong("a string", entry, value, what, elements);
            return null;
        }

        string text = TextOf(written, findings);
        if (text.Length == 0)
        {
            findings.Error(DiagnosticCodes.WrongValue, $"Expected a non-empty string for {what}, but got an empty one.", PositionOf(value, findings), elements);
            return null;
        }

        return new Declared<string>(text, PositionOf(value, findings));
    }

    /// <summary>A quantity of an element, a finite number, whole or not; its default where it is not there or was reported.</summary>
    public Declared<double> Quantity(TomlEntry element, QuantityKey key)
    {
        ElementQuantity quantity = key.Quantity;
        if (element.Find(key.Key) is not { } entry)
        {
            return new Declared<double>(quantity.Default);
        }

        if (TryNumber(entry.Value, out double number))
        {
            return new Declared<double>(number, PositionOf(entry.Value!, findings));
        }

        WrongNumber(entry, entry.Value, $"the {quantity.What} ({quantity.Unit}) of {Quoted.Name(element.Key)}", quantity.Unit, [element.Key]);
        return new Declared<double>(quantity.Default);
    }

    /// <summary>Whether a value is a finite number, whole or not.</summary>
    public static bool TryNumber(ValueSyntax? value, out double number)
    {
        number = value switch { IntegerValueSyntax whole => whole.Value, FloatValueSyntax real => real.Value, _ => double.NaN };
        return double.IsFinite(number);
    }

    /// <summary>Reports a value that is no finite number.</summary>
    /// <param name="entry">The entry in which the value stands, itself or in an array.</param>
    /// <param name="value">The value; null where the entry has a table.</param>
    /// <param name="what">What the value is.</param>
    /// <param name="unit">The unit in which it counts, in the plural.</param>
    /// <param name="elements">The element concerned.</param>
    public void WrongNumber(TomlEntry entry, ValueSyntax? value, string what, string unit, string[]? elements)
    {
        if (value is IntegerValueSyntax or FloatValueSyntax)
        {
            OutOfRange("a finite number", value, what, elements);
            return;
        }

        string advice = value is StringValueSyntax text ? QuantityHint.For(TextOf(text, findings), unit) : string.Empty;
        Wrong("a number", entry, value, what, elements, advice);
    }

    /// <summary>Reports a number out of its range.</summary>
    public void OutOfRange(string expected, ValueSyntax value, string what, string[]? elements) =>
        findings.Error(DiagnosticCodes.ValueOutOfRange, $"Expected {expected} for {what}, but got {Written(value)}.", PositionOf(value, findings), elements);

    /// <summary>A number as the exact decimal written, or a fraction in quotation marks; null where it was reported.</summary>
    public Declared<Fraction>? Exact(TomlEntry entry, ValueSyntax? value, string what)
    {
        Fraction exact;
        switch (value)
        {
            case IntegerValueSyntax whole:
                return new Declared<Fraction>(new Fraction(whole.Value), PositionOf(value, findings));
            case StringValueSyntax text when ExactDecimal.TryParseRatio(TextOf(text, findings), out exact):
            case FloatValueSyntax real when ExactDecimal.TryParse((real.Token?.Text ?? string.Empty).Replace("_", string.Empty, StringComparison.Ordinal), out exact):
                return new Declared<Fraction>(exact, PositionOf(value, findings));
            case FloatValueSyntax real:
                string expected = double.IsFinite(real.Value) ? $"a number of at most {ExactDecimal.MaximumLength} characters that a double can hold" : "a finite number";
                findings.Error(DiagnosticCodes.ValueOutOfRange, $"Expected {expected} for {what}, but got {Written(value)}.", PositionOf(value, findings));
                return null;
            default:
                Wrong("a number, or a fraction such as \"2/15\",", entry, value, what);
                return null;
        }
    }

    /// <summary>The items of an array; null where it is none, or one of them was reported.</summary>
    public Declared<Declared<T>[]>? Items<T>(TomlEntry entry, string expected, string what, Func<ValueSyntax?, int, Declared<T>?> read)
    {
        if (entry.Value is not ArraySyntax array)
        {
            Wrong(expected, entry, entry.Value, what);
            return null;
        }

        var items = new List<Declared<T>>(array.Items.ChildrenCount);
        foreach (ArrayItemSyntax item in array.Items)
        {
            if (read(item.Value, items.Count + 1) is not { } known)
            {
                return null;
            }

            items.Add(known);
        }

        return new([.. items], PositionOf(array, findings));
    }

    /// <summary>Whether an entry has a name and is a table; reported where not.</summary>
    public bool IsNamedTable(TomlEntry entry, string expected, string kind, string[]? elements = null)
    {
        if (entry.Key.Length == 0)
        {
            findings.Error(DiagnosticCodes.WrongValue, $"Expected a non-empty name of a {kind}, but got an empty one.", entry.Position);
        }
        else if (!entry.IsTable)
        {
            Wrong(expected, entry, entry.Value, $"{kind} {Quoted.Name(entry.Key)}", elements);
        }

        return entry.Key.Length > 0 && entry.IsTable;
    }

    /// <summary>Reports a value of another type than expected.</summary>
    public void Wrong(string expected, TomlEntry entry, ValueSyntax? value, string what, string[]? elements = null, string advice = "")
    {
        SourcePosition place = value is null ? entry.Position : PositionOf(value, findings);
        findings.Error(DiagnosticCodes.WrongValue, $"Expected {expected} for {what}, but got {Describe(entry, value)}.{advice}", place, elements);
    }

    private static string Describe(TomlEntry entry, ValueSyntax? value) => value switch
    {
        null => entry.Form == TomlForm.Array ? "an array of tables" : "a table",
        StringValueSyntax text => $"the string \"{Quoted.Plain(text.Value ?? string.Empty)}\"",
        IntegerValueSyntax or FloatValueSyntax => $"the number {Written(value)}",
        BooleanValueSyntax boolean => boolean.Value ? "true" : "false",
        ArraySyntax array => array.Items.ChildrenCount == 0 ? "an empty array" : "an array",
        InlineTableSyntax => "a table",
        _ => "a date or time",
    };

    private static string Written(ValueSyntax value) =>
        Quoted.Plain((value as IntegerValueSyntax)?.Token?.Text ?? (value as FloatValueSyntax)?.Token?.Text ?? string.Empty);
}
