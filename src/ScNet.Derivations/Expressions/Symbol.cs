namespace ScNet.Derivations.Expressions;

/// <summary>
/// A letter in an <see cref="Expression"/>: a component value, a port's voltage or current, the switching
/// frequency. Known by what it stands for, not by how it is written. Immutable; equal where all of
/// kind, element and phase are.
/// </summary>
[ShownAsText("A symbol is a name.")]
public sealed class Symbol : IEquatable<Symbol>
{
    internal Symbol(SymbolKind kind, string element = "", int phase = 0)
    {
        Kind = kind;
        Element = element;
        Phase = phase;
    }

    /// <summary>Switching frequency in hertz (Hz), written f.</summary>
    public static Symbol Frequency { get; } = new(SymbolKind.Frequency);

    /// <summary>Input voltage in volts (V), written V_in.</summary>
    public static Symbol InputVoltage { get; } = new(SymbolKind.InputVoltage);

    /// <summary>Load current in amperes (A), written I_out.</summary>
    public static Symbol LoadCurrent { get; } = new(SymbolKind.LoadCurrent);

    /// <summary>The one capacitance in farads (F) of equal capacitors, written C.</summary>
    public static Symbol EqualCapacitance { get; } = new(SymbolKind.Capacitance);

    /// <summary>The one on-resistance in ohms (Ω) of equal switches, written R.</summary>
    public static Symbol EqualOnResistance { get; } = new(SymbolKind.OnResistance);

    /// <summary>The one series resistance in ohms (Ω) of equal capacitors, written ESR.</summary>
    public static Symbol EqualSeriesResistance { get; } = new(SymbolKind.SeriesResistance);

    /// <summary>A duty that belongs to no phase, a number, written D.</summary>
    public static Symbol Duty { get; } = new(SymbolKind.Duty);

    /// <summary>The name of the element, the node or the loop it belongs to; empty where it belongs to none.</summary>
    public string Element { get; }

    /// <summary>The number of the phase it belongs to, from 1; 0 where it belongs to none.</summary>
    public int Phase { get; }

    internal SymbolKind Kind { get; }

    /// <summary>
    /// The symbol in plain text, by which <see cref="Expression.Evaluate(IReadOnlyDictionary{string, double})"/>
    /// looks up values: "C_fly1", "R_s1", "ESR_fly1", "f". A name with other characters than letters,
    /// digits and underscores stands in quotes: "C_'fly 1'".
    /// </summary>
    public string Name => SymbolNotation.ToText(this);

    /// <summary>Capacitance of a capacitor in farads (F).</summary>
    /// <param name="capacitor">The name of the capacitor.</param>
    public static Symbol Capacitance(string capacitor) => Of(SymbolKind.Capacitance, capacitor);

    /// <summary>On-resistance of a switch in ohms (Ω).</summary>
    /// <param name="name">The name of the switch.</param>
    public static Symbol OnResistance(string name) => Of(SymbolKind.OnResistance, name);

    /// <summary>Series resistance of a capacitor in ohms (Ω).</summary>
    /// <param name="capacitor">The name of the capacitor.</param>
    public static Symbol SeriesResistance(string capacitor) => Of(SymbolKind.SeriesResistance, capacitor);

    /// <summary>The share of a phase in the period, a number, written D1 for phase 1.</summary>
    /// <param name="phaseNumber">The phase number, from 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1.</exception>
    public static Symbol DutyOf(int phaseNumber)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(phaseNumber, 1);
        return new Symbol(SymbolKind.Duty, string.Empty, phaseNumber);
    }

    /// <summary>The symbol in TeX's math language, without delimiters: "C_{\mathrm{fly1}}".</summary>
    public string ToLatex() => SymbolNotation.ToLatex(this);

    /// <inheritdoc/>
    public bool Equals(Symbol? other) =>
        other is not null && Kind == other.Kind && Phase == other.Phase && string.Equals(Element, other.Element, StringComparison.Ordinal);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Symbol);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kind, Phase, Element.GetHashCode(StringComparison.Ordinal));

    /// <summary>The same as <see cref="Name"/>.</summary>
    public override string ToString() => Name;

    /// <summary>The order of symbols in an expression: by kind, then by name with numbers in it as numbers, then by phase.</summary>
    internal static int Compare(Symbol left, Symbol right)
    {
        int order = ((int)left.Kind).CompareTo((int)right.Kind);
        order = order != 0 ? order : NaturalOrder.Compare(left.Element, right.Element);
        return order != 0 ? order : left.Phase.CompareTo(right.Phase);
    }

    private static Symbol Of(SymbolKind kind, string element)
    {
        ArgumentException.ThrowIfNullOrEmpty(element);
        return new Symbol(kind, element);
    }
}
