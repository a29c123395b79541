using ScNet.Analysis;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Checking;

/// <summary>The converter and mode that statements refer to; turns names into positions.</summary>
internal sealed class DerivationScope
{
    private readonly Dictionary<string, int> _capacitors = [];
    private readonly Dictionary<string, int> _switches = [];

    public DerivationScope(ModeOutcome outcome)
    {
        Outcome = outcome;
        for (int c = 0; c < Converter.Capacitors.Count; c++)
        {
            _capacitors.Add(Converter.Capacitors[c].Name, c);
        }

        for (int s = 0; s < Converter.Switches.Count; s++)
        {
            _switches.Add(Converter.Switches[s].Name, s);
        }
    }

    /// <summary>What came of analysing the mode.</summary>
    public ModeOutcome Outcome { get; }

    /// <summary>The analysis, where there is a result.</summary>
    public ModeAnalysis Analysis => Outcome.Require();

    public Converter Converter => Outcome.Converter;

    /// <summary>The converter's name, and the mode's where there are several.</summary>
    public string Title => Converter.Modes.Count == 1 ? Converter.Name : $"{Converter.Name}, mode {Outcome.Mode.Name}";

    public Statement Whole(StatementKind kind, string? element, StatedValue value) => Make(kind, element, null, value);

    public Statement Phase(StatementKind kind, string? element, int phase, StatedValue value) =>
        phase >= 1 && phase <= Converter.Phases.Count
            ? Make(kind, element, phase, value)
            : throw new ArgumentOutOfRangeException(nameof(phase), phase, $"'{Converter.Name}' has the phases 1 to {Converter.Phases.Count}.");

    public IEnumerable<Statement> Phases(StatementKind kind, string? element, StatedValue[] values)
    {
        ArgumentNullException.ThrowIfNull(values);
        return values.Length == Converter.Phases.Count
            ? [.. values.Select((value, j) => Make(kind, element, j + 1, value))]
            : throw new ArgumentException($"Expected {Converter.Phases.Count} values for the {Statement.Describe(kind, element)}, one per phase of '{Converter.Name}', but got {values.Length}.", nameof(values));
    }

    /// <summary>A closed form in the symbols of the converter. The name R_SSL is that of a switch "SSL" where there is one, and so with the others.</summary>
    public FormStatement Form(FormKind kind, Expression expression)
    {
        ArgumentNullException.ThrowIfNull(expression);
        expression = expression.Replace(symbol => symbol.Kind switch
        {
            SymbolKind.SlowSwitchingLimit when _switches.ContainsKey("SSL") => Symbol.OnResistance("SSL"),
            SymbolKind.ChargeSharing when _switches.ContainsKey("sharing") => Symbol.OnResistance("sharing"),
            SymbolKind.FastSwitchingLimit when _switches.ContainsKey("FSL") => Symbol.OnResistance("FSL"),
            _ => symbol,
        });
        foreach (Symbol symbol in expression.Symbols)
        {
            bool isKnown = symbol.Kind switch
            {
                SymbolKind.Frequency or SymbolKind.InputVoltage or SymbolKind.LoadCurrent => true,
                SymbolKind.Capacitance or SymbolKind.SeriesResistance => symbol.Element.Length == 0 || Find(_capacitors, "capacitor", symbol.Element) >= 0,
                SymbolKind.OnResistance => symbol.Element.Length == 0 || Find(_switches, "switch", symbol.Element) >= 0,
                _ => false,
            };
            if (!isKnown || symbol.Phase > 0)
            {
                throw new ArgumentException($"Expected a closed form in capacitances, resistances, f, V_in and I_out, but {symbol} is itself a result.", nameof(expression));
            }
        }

        return new FormStatement(kind, expression);
    }

    private Statement Make(StatementKind kind, string? element, int? phase, StatedValue value)
    {
        (int index, bool isCapacitor) = kind switch
        {
            StatementKind.Ratio or StatementKind.InputCharge or StatementKind.OutputCharge => (0, false),
            StatementKind.CapacitorCharge or StatementKind.CapacitorVoltage or StatementKind.SlowCoefficient =>
                (Find(_capacitors, "capacitor", element), true),
            StatementKind.FastCoefficient when element is not null && _capacitors.TryGetValue(element, out int capacitor) => (capacitor, true),
            StatementKind.FastCoefficient => (Find(_switches, "switch or capacitor", element), false),
            _ => (Find(_switches, "switch", element), false),
        };
        return new Statement(kind, element, phase, value, new Subject(kind, index, (phase ?? 1) - 1, isCapacitor));
    }

    private int Find(Dictionary<string, int> index, string kind, string? name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return index.TryGetValue(name, out int found) ? found : throw new ArgumentException($"'{Converter.Name}' has no {kind} '{name}'.", nameof(name));
    }
}
