namespace ScNet.Derivations.Expressions;

/// <summary>Whether a quantity has a <see cref="ClosedForm"/>, and why not.</summary>
public enum ClosedFormOutcome
{
    /// <summary>The topology fixes all coefficients: there is an expression with fractions.</summary>
    Exact,

    /// <summary>Component values decide how charge divides, so no closed form with fractions exists.</summary>
    DecidedByComponentValues,

    /// <summary>Nothing in the circuit determines the quantity (a floating node, say). It is not zero.</summary>
    Undetermined,
}
