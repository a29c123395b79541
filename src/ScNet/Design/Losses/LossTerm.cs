namespace ScNet.Design.Losses;

/// <summary>One loss of one element wherever the converter runs.</summary>
/// <param name="Kind">What it comes from.</param>
/// <param name="Element">The name of the element; empty for the whole converter.</param>
/// <param name="Watts">The power.</param>
internal readonly record struct LossTerm(LossKind Kind, string Element, LossPolynomial Watts);
