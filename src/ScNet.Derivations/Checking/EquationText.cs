using Fractions;

namespace ScNet.Derivations.Checking;

/// <summary>Equations in words and symbols, and in the numbers that break them.</summary>
internal sealed class EquationText(EquationSet set)
{
    /// <summary>The most terms that are written out.</summary>
    public const int MaximumTerms = 8;

    private const int MaximumNodes = 4;

    /// <summary>"KCL at p1+vin in phase 1", "balance of fly1".</summary>
    public string Name(Equation equation) => equation.Kind switch
    {
        EquationKind.OpenSwitch => $"{Switch(equation)} is open in phase {equation.Phase + 1}",
        EquationKind.ClosedSwitch => $"{Switch(equation)} is closed in phase {equation.Phase + 1}",
        EquationKind.Balance => $"balance of {Capacitor(equation)}",
        EquationKind.Period => "output charge of a period is 1",
        EquationKind.LoadShare => $"constant load current in phase {equation.Phase + 1}",
        EquationKind.Held => $"{Capacitor(equation)} is held by the sources alone",
        EquationKind.Group or EquationKind.ReferenceGroup => $"KCL at {Nodes(equation)} in phase {equation.Phase + 1}",
        EquationKind.Node or EquationKind.ReferenceNode => $"KCL at {set.Converter.Nodes[equation.Place]} in phase {equation.Phase + 1}",
        EquationKind.Loop => $"loop {Around(equation)} in phase {equation.Phase + 1}",
        EquationKind.AverageLoop => "average output voltage",
        EquationKind.Across => $"path across {Switch(equation)} in phase {equation.Phase + 1}",
        _ => "power balance",
    };

    /// <summary>The name, the law in symbols where that says more, and the numbers.</summary>
    public string Broken(Equation equation, Func<int, (Quantity Value, bool IsStated)> value)
    {
        Sides sides = Split(equation);
        string left = Numbers(sides.Left, value), right = Numbers(sides.Right, value);
        switch (equation.Kind)
        {
            case EquationKind.OpenSwitch or EquationKind.ClosedSwitch or EquationKind.Held or EquationKind.LoadShare:
                return $"{Name(equation)}: {equation.Constant}, not {left}";
            case EquationKind.Balance:
                return $"{Name(equation)}: {left} leaves {Workbench.Residual(equation, u => value(u).Value)}";
            case EquationKind.Period:
                return $"{Name(equation)}: {left} = {Sum(sides.Left, value)}";
            default:
                return $"{Name(equation)}: {Symbols(sides.Left)} = {Symbols(sides.Right)}, but {left} ≠ {right}";
        }
    }

    private static string Numbers((Fraction Weight, int Unknown)[] side, Func<int, (Quantity Value, bool IsStated)> value)
    {
        if (side.Length == 0)
        {
            return "0";
        }

        return side.Length > MaximumTerms
            ? $"a sum of {Sum(side, value)}"
            : string.Join(" + ", side.Select((t, k) =>
            {
                (Quantity number, bool isStated) = t.Unknown < 0 ? (t.Weight, true) : value(t.Unknown);
                string text = !isStated ? $"[{number}]" : number.Sign < 0 && k > 0 ? $"({number})" : number.ToString();
                return t.Unknown < 0 || t.Weight == Fraction.One ? text : $"{t.Weight}·{text}";
            }));
    }

    private static Quantity Sum((Fraction Weight, int Unknown)[] side, Func<int, (Quantity Value, bool IsStated)> value) =>
        side.Aggregate(Quantity.Zero, (sum, t) => QuantityArithmetic.Add(
            sum, t.Unknown < 0 ? t.Weight : QuantityArithmetic.Multiply(t.Weight, value(t.Unknown).Value)));

    // Without minus signs: what is taken away on one side is added on the other. A constant has no unknown.
    private static Sides Split(Equation equation)
    {
        (Fraction Weight, int Unknown)[] left = [.. equation.Terms.Where(t => t.Coefficient.IsPositive).Select(t => (t.Coefficient, t.Unknown))];
        (Fraction Weight, int Unknown)[] right = [.. equation.Terms.Where(t => t.Coefficient.IsNegative).Select(t => (-t.Coefficient, t.Unknown))];
        if (equation.Constant.IsPositive)
        {
            right = [(equation.Constant, Unknowns.None), .. right];
        }
        else if (equation.Constant.IsNegative)
        {
            left = [(-equation.Constant, Unknowns.None), .. left];
        }

        return left.Length == 0 ? new Sides(right, left) : new Sides(left, right);
    }

    private string Symbols((Fraction Weight, int Unknown)[] side)
    {
        if (side.Length == 0)
        {
            return "0";
        }

        string text = string.Join(" + ", side.Take(MaximumTerms).Select(t =>
            t.Unknown < 0 ? (t.Weight == Fraction.One ? set.Converter.InputNode : $"{t.Weight}·{set.Converter.InputNode}")
            : t.Weight == Fraction.One ? set.Unknowns.Name(t.Unknown) : $"{t.Weight}·{set.Unknowns.Name(t.Unknown)}"));
        return side.Length <= MaximumTerms ? text : $"{text} + {side.Length - MaximumTerms} more";
    }

    // The loop from the input where it passes there, else from its first branch.
    private string Around(Equation equation)
    {
        List<string> names = [.. equation.Terms.Select(t => set.Unknowns.Name(t.Unknown))];
        if (!equation.Constant.IsZero)
        {
            names.Insert(0, set.Converter.InputNode);
        }

        return names.Count <= MaximumTerms
            ? string.Join('–', names)
            : $"{string.Join('–', names.Take(MaximumTerms))}–… ({names.Count} branches)";
    }

    private string Nodes(Equation equation)
    {
        ReadOnlySpan<int> members = set.Forests[equation.Phase].Members(equation.Place);
        List<string> names = [];
        foreach (int node in members[..Math.Min(members.Length, MaximumNodes)])
        {
            names.Add(set.Converter.Nodes[node]);
        }

        return string.Join('+', names) + (members.Length > MaximumNodes ? $"+{members.Length - MaximumNodes} more" : string.Empty);
    }

    private string Switch(Equation equation) => set.Converter.Switches[equation.Place].Name;

    private string Capacitor(Equation equation) => set.Converter.Capacitors[equation.Place].Name;

    private readonly record struct Sides((Fraction Weight, int Unknown)[] Left, (Fraction Weight, int Unknown)[] Right);
}
