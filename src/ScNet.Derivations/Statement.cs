namespace ScNet.Derivations;

/// <summary>One value that a derivation states. Equality is by what it is about and by the value.</summary>
public sealed record Statement
{
    internal Statement(StatementKind kind, string? element, int? phase, StatedValue value, Subject subject)
    {
        Kind = kind;
        Element = element;
        Phase = phase;
        Value = value;
        Subject = subject;
    }

    /// <summary>What it is about.</summary>
    internal StatementKind Kind { get; }

    /// <summary>The name of the capacitor or switch; null for ratio, input and output.</summary>
    public string? Element { get; }

    /// <summary>The phase number from 1; null where the value belongs to the whole period.</summary>
    public int? Phase { get; }

    /// <summary>The value as stated.</summary>
    public StatedValue Value { get; }

    /// <summary>What it is about, in words: "charge of fly1 in phase 2".</summary>
    public string Description => Describe(Kind, Element) + (Phase is { } phase ? $" in phase {phase}" : string.Empty);

    internal Subject Subject { get; }

    /// <summary>What it is about and the value: "charge of fly1 in phase 2 = 1/3".</summary>
    public override string ToString() => $"{Description} = {Value}";

    internal static string Describe(StatementKind kind, string? element) => kind switch
    {
        StatementKind.Ratio => "ratio",
        StatementKind.InputCharge => "input charge",
        StatementKind.OutputCharge => "output charge",
        StatementKind.CapacitorCharge or StatementKind.SwitchCharge => $"charge of {element}",
        StatementKind.CapacitorVoltage => $"voltage of {element}",
        StatementKind.BlockingVoltage => $"blocking voltage of {element}",
        StatementKind.PeakBlockingVoltage => $"peak blocking voltage of {element}",
        StatementKind.SlowCoefficient => $"slow coefficient of {element}",
        _ => $"fast coefficient of {element}",
    };
}
