namespace ScNet.Derivations.Expressions;

/// <summary>A power of a symbol in a <see cref="Term"/>.</summary>
/// <param name="Symbol">The symbol.</param>
/// <param name="Power">The exponent: not 0, negative where the symbol is in the denominator.</param>
internal readonly record struct Factor(Symbol Symbol, int Power);
