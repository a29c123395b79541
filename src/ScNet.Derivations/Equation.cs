using Fractions;

namespace ScNet.Derivations;

/// <summary>The laws, those that a reader sees first standing first.</summary>
internal enum EquationKind
{
    OpenSwitch,
    ClosedSwitch,
    Balance,
    Period,
    LoadShare,
    Held,
    Group,
    Loop,
    AverageLoop,
    Across,
    Power,
    Node,
    ReferenceGroup,
    ReferenceNode,
}

/// <summary>One linear equation: Σ coefficient · unknown = constant.</summary>
/// <param name="Kind">Which law it is.</param>
/// <param name="Place">The element, node or contracted node it is about; by kind.</param>
/// <param name="Phase">The phase from 0, or 0 where it is about the period.</param>
/// <param name="Terms">Unknowns, each once, with coefficients; of a loop in the order of the loop.</param>
/// <param name="Constant">The right-hand side.</param>
internal sealed record Equation(EquationKind Kind, int Place, int Phase, (int Unknown, Fraction Coefficient)[] Terms, Fraction Constant);
