namespace ScNet.Design.Losses;

/// <summary>How a kind of loss is computed and where that comes from.</summary>
/// <param name="Kind">The kind of loss.</param>
/// <param name="Name">What the kind is called in a sentence, such as "charge sharing".</param>
/// <param name="Formula">The formula in words and symbols, for people.</param>
/// <param name="Source">The published source, or "common practice, no source", or the page of the theory.</param>
public sealed record LossFormula(LossKind Kind, string Name, string Formula, string Source);
