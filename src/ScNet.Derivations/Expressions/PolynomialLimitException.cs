namespace ScNet.Derivations.Expressions;

/// <summary>Polynomials have become too long to go on with.</summary>
internal sealed class PolynomialLimitException : Exception
{
    public PolynomialLimitException()
        : base("The polynomials have too many terms.")
    {
    }
}
