using ScNet.Derivations.Expressions;

namespace ScNet.Derivations;

/// <summary>One closed form that a derivation states. Equality is by quantity and canonical expression.</summary>
public sealed record FormStatement
{
    internal FormStatement(FormKind kind, Expression expression)
    {
        Kind = kind;
        Expression = expression;
    }

    /// <summary>Which quantity it is of.</summary>
    internal FormKind Kind { get; }

    /// <summary>The expression as stated, in its canonical form.</summary>
    public Expression Expression { get; }

    /// <summary>The quantity in words: "slow-switching limit".</summary>
    public string Description => Kind switch
    {
        FormKind.OutputVoltage => "output voltage",
        FormKind.SlowSwitchingLimit => "slow-switching limit",
        FormKind.FastSwitchingLimit => "fast-switching limit",
        FormKind.SlowSwitchingLoss => "slow-switching loss",
        _ => "fast-switching loss",
    };

    /// <summary>The quantity and the expression: "slow-switching limit = 2/(9·C·f)".</summary>
    public override string ToString() => $"{Description} = {Expression}";
}
