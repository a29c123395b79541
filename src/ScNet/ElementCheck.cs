namespace ScNet;

/// <summary>Checks the names, the values and the terminals of capacitors, switches and modes, each by itself.</summary>
internal static class ElementCheck
{
    public static void Check(NetlistDeclaration declaration, DiagnosticList findings)
    {
        CheckNames(declaration, findings);
        foreach (DeclaredCapacitor capacitor in declaration.Capacitors)
        {
            string name = capacitor.Name.Value;
            CheckValue(name, ElementQuantity.Capacitance, capacitor.Farads, findings);
            CheckValue(name, ElementQuantity.SeriesResistance, capacitor.EsrOhms, findings);
            if (capacitor.Positive == capacitor.Bottom && capacitor.Positive.Length > 0)
            {
                findings.Error(DiagnosticCodes.SameNode, $"Both plates of capacitor {Quoted.Name(name)} are on node {Quoted.Name(capacitor.Positive)}. Move one of them.", capacitor.Name.Position, [name]);
            }
        }

        foreach (DeclaredSwitch @switch in declaration.Switches)
        {
            string name = @switch.Name.Value;
            CheckValue(name, ElementQuantity.OnResistance, @switch.Ohms, findings);
            if (@switch.First == @switch.Second)
            {
                findings.Warning(DiagnosticCodes.SameNode, $"Both terminals of switch {Quoted.Name(name)} are on node {Quoted.Name(@switch.First)}, so it does nothing. Move one of them, or leave it out.", @switch.Name.Position, [name]);
            }
        }
    }

    private static void CheckNames(NetlistDeclaration declaration, DiagnosticList findings)
    {
        Dictionary<string, SourcePosition?> seen = new(declaration.Capacitors.Count + declaration.Switches.Count, StringComparer.Ordinal);
        foreach (DeclaredCapacitor capacitor in declaration.Capacitors)
        {
            CheckName("elements", capacitor.Name, seen, findings);
        }

        foreach (DeclaredSwitch @switch in declaration.Switches)
        {
            CheckName("elements", @switch.Name, seen, findings);
        }

        seen.Clear();
        foreach (DeclaredMode mode in declaration.Modes)
        {
            CheckName("modes", mode.Name, seen, findings);
        }
    }

    private static void CheckName(
        string what, Declared<string> name, Dictionary<string, SourcePosition?> seen, DiagnosticList findings)
    {
        if (seen.TryAdd(name.Value, name.Position))
        {
            return;
        }

        string first = seen[name.Value] is { } place ? FormattableString.Invariant($" (first at line {place.Line})") : string.Empty;
        string[] elements = what == "elements" ? [name.Value] : [];
        findings.Error(DiagnosticCodes.DuplicateName, $"Two {what} are named {Quoted.Name(name.Value)}{first}. Rename one.", name.Position, elements);
    }

    private static void CheckValue(string element, ElementQuantity quantity, Declared<double> value, DiagnosticList findings)
    {
        bool allowZero = quantity.Default == 0;
        if (!Guard.IsInRange(value.Value, allowZero))
        {
            string expected = allowZero ? "zero, or finite and positive" : "finite and positive";
            findings.Error(DiagnosticCodes.ValueOutOfRange, $"The {quantity.What} of {Quoted.Name(element)} is {value.Value} {quantity.Unit}. Give a value that is {expected}, from {Guard.MinimumValue} to {Guard.MaximumValue}.", value.Position, [element]);
        }
    }
}
