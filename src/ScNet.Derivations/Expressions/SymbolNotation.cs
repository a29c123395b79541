using System.Globalization;
using System.Xml.Linq;

namespace ScNet.Derivations.Expressions;

/// <summary>
/// How symbols are written: a letter, a name below it, and the phase in brackets. Ports have capital
/// letters and elements small ones, so that a capacitor named "out" is not taken for the output.
/// </summary>
internal static class SymbolNotation
{
    public static string ToText(Symbol symbol)
    {
        (string letter, string below) = Parts(symbol);
        if (symbol.Kind == SymbolKind.Duty)
        {
            return letter + below;
        }

        string name = symbol.Element.Length > 0 ? NameText.Quoted(symbol.Element) : below;
        string phase = symbol.Phase > 0 ? string.Create(CultureInfo.InvariantCulture, $"[{symbol.Phase}]") : string.Empty;
        return name.Length > 0 ? $"{letter}_{name}{phase}" : letter + phase;
    }

    public static string ToLatex(Symbol symbol, int power = 1)
    {
        (string letter, string below) = Parts(symbol);
        letter = letter switch { "φ" => "\\varphi", _ when letter.Length > 1 => $"\\mathrm{{{letter}}}", _ => letter };
        string name = symbol.Element.Length > 0 ? symbol.Element : below;
        string whole = name.Length == 0 ? letter
            : symbol.Kind is SymbolKind.LoopCharge or SymbolKind.Duty ? $"{letter}_{{{name}}}"
            : $"{letter}_{{{NameText.LatexMath(name)}}}";
        if (symbol.Phase > 0 && symbol.Kind != SymbolKind.Duty)
        {
            whole += string.Create(CultureInfo.InvariantCulture, $"^{{({symbol.Phase})}}");
            whole = power == 1 ? whole : $"\\bigl({whole}\\bigr)";
        }

        return power == 1 ? whole : string.Create(CultureInfo.InvariantCulture, $"{whole}^{{{power}}}");
    }

    public static XElement ToMathML(Symbol symbol, int power = 1)
    {
        (string letter, string below) = Parts(symbol);
        string name = symbol.Element.Length > 0 ? NameText.Visible(symbol.Element) : below;
        XElement over = ExpressionMathML.Number(power);
        XElement mi = ExpressionMathML.Element("mi", letter);
        if (symbol.Phase > 0 && symbol.Kind != SymbolKind.Duty)
        {
            XElement phase = ExpressionMathML.Element(
                "mrow", ExpressionMathML.Operator("("), ExpressionMathML.Number(symbol.Phase), ExpressionMathML.Operator(")"));
            XElement whole = ExpressionMathML.Element("msubsup", mi, ExpressionMathML.Element("mtext", name), phase);
            return power == 1 ? whole : ExpressionMathML.Element(
                "msup",
                ExpressionMathML.Element("mrow", ExpressionMathML.Operator("("), whole, ExpressionMathML.Operator(")")),
                over);
        }

        return (name.Length, power) switch
        {
            (0, 1) => mi,
            (0, _) => ExpressionMathML.Element("msup", mi, over),
            (_, 1) => ExpressionMathML.Element("msub", mi, ExpressionMathML.Element("mtext", name)),
            _ => ExpressionMathML.Element("msubsup", mi, ExpressionMathML.Element("mtext", name), over),
        };
    }

    private static (string Letter, string Below) Parts(Symbol symbol) => symbol.Kind switch
    {
        SymbolKind.Ratio => ("M", string.Empty),
        SymbolKind.SlowSwitchingLimit => ("R", "SSL"),
        SymbolKind.ChargeSharing => ("R", "sharing"),
        SymbolKind.FastSwitchingLimit => ("R", "FSL"),
        SymbolKind.SlowSwitchingLoss => ("P", "SSL"),
        SymbolKind.ChargeSharingLoss => ("P", "sharing"),
        SymbolKind.FastSwitchingLoss => ("P", "FSL"),
        SymbolKind.ElementVoltage => ("v", string.Empty),
        SymbolKind.NodePotential => ("φ", string.Empty),
        SymbolKind.OutputVoltage => ("V", "out"),
        SymbolKind.InputVoltage => ("V", "in"),
        SymbolKind.LoadCurrent => ("I", "out"),
        SymbolKind.ElementCharge => ("a", string.Empty),
        SymbolKind.OutputCharge => ("A", "out"),
        SymbolKind.InputCharge => ("A", "in"),
        SymbolKind.LoopCharge => ("c", string.Empty),
        SymbolKind.OnResistance => ("R", string.Empty),
        SymbolKind.SeriesResistance => ("ESR", string.Empty),
        SymbolKind.Capacitance => ("C", string.Empty),
        SymbolKind.InductorCurrent => ("i", string.Empty),
        SymbolKind.Duty => ("D", symbol.Phase > 0 ? symbol.Phase.ToString(CultureInfo.InvariantCulture) : string.Empty),
        SymbolKind.Frequency => ("f", string.Empty),
        _ => throw new ArgumentOutOfRangeException(nameof(symbol), symbol.Kind, "Expected a kind of symbol."),
    };
}
