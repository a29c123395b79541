namespace ScNet.Design.Losses;

/// <summary>One loss of one element at an operating point.</summary>
/// <param name="Kind">What it comes from; <see cref="LossFormula"/> has its formula and its source.</param>
/// <param name="Element">The name of the element; empty where it belongs to the whole converter.</param>
/// <param name="Watts">The power in watts (W), at least zero.</param>
public readonly record struct Loss(LossKind Kind, string Element, double Watts);
