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
            CheckValue(name, ElementQuantity.BottomCapacitance, capacitor.BottomFarads, findings);
            CheckValue(name, ElementQuantity.TopCapacitance, capacitor.TopFarads, findings);
            CheckBody(capacitor, findings);
            CheckControlled(capacitor, findings);
            if (capacitor.Positive == capacitor.Bottom && capacitor.Positive.Length > 0)
            {
                findings.Error(DiagnosticCodes.SameNode, $"Both plates of capacitor {Quoted.Name(name)} are on node {Quoted.Name(capacitor.Positive)}. Move one of them.", capacitor.Name.Position, [name]);
            }
        }

        foreach (DeclaredSwitch @switch in declaration.Switches)
        {
            string name = @switch.Name.Value;
            CheckValue(name, ElementQuantity.OnResistance, @switch.Ohms, findings);
            CheckValue(name, ElementQuantity.ForwardVoltage, @switch.DiodeVolts ?? default, findings);
            if (@switch.First == @switch.Second)
            {
                findings.Warning(DiagnosticCodes.SameNode, $"Both terminals of switch {Quoted.Name(name)} are on node {Quoted.Name(@switch.First)}, so it does nothing. Move one of them, or leave it out.", @switch.Name.Position, [name]);
            }
        }

        CheckInductors(declaration, findings);
    }

    private static void CheckInductors(NetlistDeclaration declaration, DiagnosticList findings)
    {
        foreach (DeclaredInductor inductor in declaration.Inductors)
        {
            string name = inductor.Name.Value;
            CheckValue(name, ElementQuantity.Inductance, inductor.Henries, findings);
            CheckValue(name, ElementQuantity.WindingResistance, inductor.Ohms, findings);
            if (inductor.First == inductor.Second && inductor.First.Length > 0)
            {
                findings.Error(DiagnosticCodes.SameNode, $"Both terminals of inductor {Quoted.Name(name)} are on node {Quoted.Name(inductor.First)}. Move one of them.", inductor.Name.Position, [name]);
            }
        }

        foreach (DeclaredParasitic parasitic in declaration.Parasitics)
        {
            string name = parasitic.Name.Value;
            CheckValue(name, ElementQuantity.Capacitance, parasitic.Farads, findings);
            if (parasitic.First == parasitic.Second && parasitic.First.Length > 0)
            {
                findings.Warning(DiagnosticCodes.SameNode, $"Both terminals of parasitic capacitance {Quoted.Name(name)} are on node {Quoted.Name(parasitic.First)}, so it does nothing. Move one of them, or leave it out.", parasitic.Name.Position, [name]);
            }
        }
    }

    // a plate whose body is its own node does nothing, and is likely a slip
    private static void CheckBody(DeclaredCapacitor capacitor, DiagnosticList findings)
    {
        bool isBottom = capacitor.BottomFarads.Value > 0 && capacitor.Body.Value == capacitor.Bottom;
        bool isTop = capacitor.TopFarads.Value > 0 && capacitor.Body.Value == capacitor.Positive;
        if (isBottom || isTop)
        {
            findings.Warning(DiagnosticCodes.SameNode, $"The {(isBottom ? "bottom" : "positive")} plate of capacitor {Quoted.Name(capacitor.Name.Value)} lies on its body's node {Quoted.Name(capacitor.Body.Value)}, so its parasitic capacitance does nothing. Name another body, or leave the capacitance out.", capacitor.Body.Position ?? capacitor.Name.Position, [capacitor.Name.Value]);
        }
    }

    private static void CheckControlled(DeclaredCapacitor capacitor, DiagnosticList findings)
    {
        if (capacitor.Controlled is { } share && (share.Value.Denominator.IsZero || !Guard.IsInRange(Math.Abs(share.Value.ToDouble()), allowZero: true)))
        {
            findings.Error(DiagnosticCodes.ValueOutOfRange, $"Capacitor {Quoted.Name(capacitor.Name.Value)} is controlled at {share.Value.ToDouble()} of the input. Give a share that is finite, such as \"1/3\".", share.Position, [capacitor.Name.Value]);
        }
    }

    private static void CheckNames(NetlistDeclaration declaration, DiagnosticList findings)
    {
        Dictionary<string, SourcePosition?> seen = new(declaration.Capacitors.Count + declaration.Switches.Count, StringComparer.Ordinal);
        foreach (Declared<string> name in declaration.Elements.Select(e => e.Name).Concat(declaration.FurtherOutputs.Select(o => o.Name)))
        {
            CheckName("elements", name, seen, findings);
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
