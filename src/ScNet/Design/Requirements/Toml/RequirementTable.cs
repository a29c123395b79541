using Fractions;
using ScNet.Netlists.Toml;
using Tomlyn.Syntax;

namespace ScNet.Design.Requirements.Toml;

/// <summary>One table of a requirement: its keys checked, its numbers read, everything wrong reported.</summary>
internal sealed class RequirementTable
{
    private readonly TomlEntry _entry;
    private readonly string _called;
    private readonly TomlValues _values;
    private readonly DiagnosticList _findings;
    private readonly bool _isComplete;
    private readonly HashSet<string> _meant;
    private readonly Dictionary<string, double> _numbers = [];

    /// <summary>Opens a table.</summary>
    /// <param name="entry">The table.</param>
    /// <param name="shape">Its keys.</param>
    /// <param name="called">What messages call it.</param>
    /// <param name="findings">Takes what is wrong.</param>
    /// <param name="isComplete">False where parts of the document were left out because of syntax errors: then nothing counts as missing.</param>
    public RequirementTable(TomlEntry entry, TableShape shape, string called, DiagnosticList findings, bool isComplete)
    {
        _entry = entry;
        _called = called;
        _values = new TomlValues(findings);
        _findings = findings;
        _isComplete = isComplete;
        _meant = TomlKeys.Check(entry, shape.Keys, called, RequirementKeys.Format, findings, Elements);
        IsSound = TomlKeys.AreKnown(entry, shape.Keys);
        foreach (NumberKey number in shape.Numbers)
        {
            ReadNumber(number);
        }
    }

    /// <summary>Whether nothing of it is wrong so far.</summary>
    public bool IsSound { get; private set; }

    /// <summary>The name under which it stands.</summary>
    public string Key => _entry.Key;

    /// <summary>Its place.</summary>
    public SourcePosition Position => _entry.Position;

    // a table without a key, of an array or the document itself, is no element
    private string[]? Elements => _entry.Key.Length > 0 ? [_entry.Key] : null;

    /// <summary>A number, or its default; zero where there is none or it was reported.</summary>
    public double this[NumberKey key] => Find(key) ?? 0;

    /// <summary>A number, or its default; null where there is none or it was reported.</summary>
    public double? Find(NumberKey key) => _numbers.TryGetValue(key.Key, out double number) ? number : key.Default;

    public bool Has(string key) => _entry.Find(key) is not null;

    public TomlEntry? Entry(string key) => _entry.Find(key);

    /// <summary>The place of a value; of the table where it is not there.</summary>
    public SourcePosition PositionOf(string key) => _entry.Find(key) is not { } entry ? _entry.Position
        : entry.Value is { } value ? TomlValues.PositionOf(value, _findings)
        : entry.Position;

    /// <summary>A string; null where there is none, which is reported where it must be there.</summary>
    /// <param name="key">The key.</param>
    /// <param name="advice">What to do where it is missing; null where it may be.</param>
    public string? Text(string key, string? advice = null)
    {
        if (_entry.Find(key) is { } entry)
        {
            string? text = _values.Text(entry, entry.Value, What(key), Elements)?.Value;
            IsSound &= text is not null;
            return text;
        }

        if (advice is not null)
        {
            Missing(key, advice);
        }

        return null;
    }

    /// <summary>Strings of an array, at least one; empty where there is none or it was reported.</summary>
    public IReadOnlyList<string> Texts(string key, string expected)
    {
        if (_entry.Find(key) is not { } entry)
        {
            return [];
        }

        if (entry.Value is not ArraySyntax { Items.ChildrenCount: > 0 })
        {
            Wrong(expected, entry, entry.Value, key);
            return [];
        }

        Declared<Declared<string>[]>? texts = _values.Items<string>(entry, expected, What(key), (value, _) => _values.Text(entry, value, What(key), Elements));
        IsSound &= texts is not null;
        return [.. (texts?.Value ?? []).Select(t => t.Value)];
    }

    /// <summary>Exact numbers of an array, decimals or fractions, at least one and none of them zero; empty where there is none or it was reported.</summary>
    public IReadOnlyList<Fraction> Exacts(string key, string expected)
    {
        if (_entry.Find(key) is not { } entry)
        {
            return [];
        }

        if (entry.Value is not ArraySyntax { Items.ChildrenCount: > 0 })
        {
            Wrong(expected, entry, entry.Value, key);
            return [];
        }

        Declared<Declared<Fraction>[]>? numbers = _values.Items<Fraction>(entry, expected, What(key), (value, _) => _values.Exact(entry, value, What(key)));
        IsSound &= numbers is not null;
        foreach (Declared<Fraction> zero in (numbers?.Value ?? []).Where(n => n.Value.IsZero))
        {
            Report(DiagnosticCodes.ValueOutOfRange, $"Expected a ratio other than zero for {What(key)}.", zero.Position!.Value);
        }

        return [.. (numbers?.Value ?? []).Select(n => n.Value)];
    }

    /// <summary>A whole number from 1, or its default.</summary>
    public int Whole(string key, int defaultValue, int maximum = 1000) =>
        _entry.Find(key) is { } entry ? WholeOf(entry, entry.Value, key, maximum) ?? defaultValue : defaultValue;

    /// <summary>One whole number, or the smallest and the largest; undetermined where there is none or it was reported.</summary>
    public Interval<int> WholeRange(string key, int maximum = 1000)
    {
        if (_entry.Find(key) is not { } entry)
        {
            return default;
        }

        ValueSyntax?[] items = ItemsOf(entry.Value);
        int[] ends = [.. items.Select(v => WholeOf(entry, v, key, maximum)).OfType<int>()];
        return ends.Length == items.Length && Ends(entry, ends, key, "whole numbers") ? new Interval<int>(ends[0], ends[^1]) : default;
    }

    /// <summary>Whether a key is true; false where it is not there.</summary>
    public bool Flag(string key)
    {
        if (_entry.Find(key) is not { } entry)
        {
            return false;
        }

        if (entry.Value is BooleanValueSyntax flag)
        {
            return flag.Value;
        }

        Wrong("true or false", entry, entry.Value, key);
        return false;
    }

    /// <summary>One positive number, or the smallest and the largest; undetermined where there is none or it was reported.</summary>
    public Interval<double> Range(string key, string unit)
    {
        if (_entry.Find(key) is not { } entry || Positives(entry, entry.Value, key, unit) is not { } ends)
        {
            return default;
        }

        return Ends(entry, ends, key, unit) ? new Interval<double>(ends[0], ends[^1]) : default;
    }

    /// <summary>One positive number or an array of them; null where there is none or it was reported.</summary>
    public double[]? Positives(string key, string unit) => _entry.Find(key) is { } entry ? Positives(entry, entry.Value, key, unit) : null;

    /// <summary>An array of pairs of finite numbers, each with the place of the pair; null where there is none or it was reported.</summary>
    public List<(double First, double Second, SourcePosition Position)>? Pairs(string key, string expected)
    {
        if (_entry.Find(key) is not { } entry)
        {
            return null;
        }

        if (entry.Value is not ArraySyntax array)
        {
            Wrong(expected, entry, entry.Value, key);
            return null;
        }

        List<(double First, double Second, SourcePosition Position)> pairs = [];
        foreach (ArrayItemSyntax item in array.Items)
        {
            if (item.Value is not ArraySyntax { Items.ChildrenCount: 2 } pair)
            {
                Wrong($"a pair in {expected}", entry, item.Value, key);
                return null;
            }

            double[] numbers = [0, 0];
            for (int i = 0; i < 2; i++)
            {
                ValueSyntax? value = pair.Items.GetChild(i)?.Value;
                if (!TomlValues.TryNumber(value, out numbers[i]))
                {
                    _values.WrongNumber(entry, value, What(key), "the unit of the key", Elements);
                    IsSound = false;
                    return null;
                }
            }

            pairs.Add((numbers[0], numbers[1], TomlValues.PositionOf(pair, _findings)));
        }

        return pairs;
    }

    /// <summary>The tables of an array of tables, opened; null where there is none or it was reported.</summary>
    public List<RequirementTable>? Tables(string key, TableShape shape, string called, string expected)
    {
        if (_entry.Find(key) is not { } entry)
        {
            return null;
        }

        if (TomlTree.TablesOf(entry, RequirementKeys.Format, _findings) is { Count: > 0 } tables)
        {
            return [.. tables.Select((t, i) => new RequirementTable(t, shape, $"{called} {i + 1}", _findings, _isComplete))];
        }

        Wrong(expected, entry, entry.Value, key);
        return null;
    }

    /// <summary>A table of it, opened; null where there is none or it was reported.</summary>
    public RequirementTable? Table(string key, TableShape shape)
    {
        if (_entry.Find(key) is not { } entry)
        {
            return null;
        }

        if (entry.IsTable)
        {
            return new RequirementTable(entry, shape, $"[{(_entry.Parent is null ? key : $"{_entry.Key}.{key}")}]", _findings, _isComplete);
        }

        Wrong($"a table [{key}]", entry, entry.Value, key);
        return null;
    }

    /// <summary>The named tables of a table, opened; empty where there is none.</summary>
    public List<RequirementTable> NamedTables(string key, TableShape shape, string kind)
    {
        if (_entry.Find(key) is not { } entry)
        {
            return [];
        }

        if (!entry.IsTable)
        {
            Wrong($"tables such as [{RequirementKeys.Process}.{key}.a]", entry, entry.Value, key);
            return [];
        }

        List<RequirementTable> tables = [];
        foreach (TomlEntry named in entry.Entries)
        {
            if (_values.IsNamedTable(named, $"a table [{RequirementKeys.Process}.{key}.{Quoted.Plain(named.Key)}]", kind, [named.Key]))
            {
                tables.Add(new RequirementTable(named, shape, $"{kind} {Quoted.Name(named.Key)}", _findings, _isComplete));
            }
            else
            {
                IsSound = false;
            }
        }

        return tables;
    }

    /// <summary>Reports a key that must be there and is not.</summary>
    public void Missing(string key, string advice)
    {
        IsSound = false;
        if (_isComplete && !_meant.Contains(key))
        {
            _findings.Error(DiagnosticCodes.MissingKey, $"There is no key '{key}' in {_called}. {advice}", _entry.Position, Elements);
        }
    }

    /// <summary>Reports a value of the wrong type or form.</summary>
    public void Wrong(string expected, TomlEntry entry, ValueSyntax? value, string key)
    {
        IsSound = false;
        _values.Wrong(expected, entry, value, What(key), Elements);
    }

    /// <summary>Reports what breaks a rule.</summary>
    public void Report(string code, string message, SourcePosition position)
    {
        IsSound = false;
        _findings.Error(code, $"{message}", position, Elements);
    }

    private string What(string key) => $"'{key}' of {_called}";

    private void ReadNumber(NumberKey number)
    {
        if (_entry.Find(number.Key) is not { } entry)
        {
            if (number.IsRequired)
            {
                Missing(number.Key, number.Unit.Length > 0 ? $"Give it in {number.Unit}." : "Give it as a plain number.");
            }
        }
        else if (NumberOf(entry, entry.Value, number.Key, number.Unit, number.Bounds) is { } value)
        {
            _numbers[number.Key] = value;
        }
    }

    private double? NumberOf(TomlEntry entry, ValueSyntax? value, string key, string unit, NumberBounds bounds)
    {
        if (!TomlValues.TryNumber(value, out double number))
        {
            _values.WrongNumber(entry, value, What(key), unit.Length > 0 ? unit : "this key", Elements);
        }
        else if (!bounds.Contains(number))
        {
            _values.OutOfRange(bounds.Expected, value!, What(key), Elements);
        }
        else
        {
            return number;
        }

        IsSound = false;
        return null;
    }

    private double[]? Positives(TomlEntry entry, ValueSyntax? value, string key, string unit)
    {
        ValueSyntax?[] items = ItemsOf(value);
        double[] numbers = [.. items.Select(i => NumberOf(entry, i, key, unit, NumberBounds.Positive)).OfType<double>()];
        return numbers.Length == items.Length ? numbers : null;
    }

    private int? WholeOf(TomlEntry entry, ValueSyntax? value, string key, int maximum)
    {
        if (value is IntegerValueSyntax whole && whole.Value >= 1 && whole.Value <= maximum)
        {
            return (int)whole.Value;
        }

        IsSound = false;
        string expected = FormattableString.Invariant($"a whole number from 1 to {maximum}");
        if (value is IntegerValueSyntax)
        {
            _values.OutOfRange(expected, value, What(key), Elements);
        }
        else
        {
            _values.Wrong(expected, entry, value, What(key), Elements);
        }

        return null;
    }

    private static ValueSyntax?[] ItemsOf(ValueSyntax? value) => value is ArraySyntax array ? [.. array.Items.Select(i => i.Value)] : [value];

    // one value, or two in brackets that do not fall
    private bool Ends<T>(TomlEntry entry, T[] ends, string key, string numbers)
        where T : IComparable<T>
    {
        if (ends.Length != (entry.Value is ArraySyntax ? 2 : 1))
        {
            Wrong($"one value, or the smallest and the largest of {numbers}, as in [1, 2],", entry, entry.Value, key);
            return false;
        }

        if (ends[^1].CompareTo(ends[0]) < 0)
        {
            Report(DiagnosticCodes.WrongValue, FormattableString.Invariant($"Expected the smaller of the two first for {What(key)}, but {ends[0]} comes before {ends[1]}. Swap them."), PositionOf(key));
            return false;
        }

        return true;
    }
}
