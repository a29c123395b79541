using ScNet.Derivations.Expressions;

namespace ScNet.Derivations;

/// <summary>The lines of a report about a closed form that is not right.</summary>
internal static class FormText
{
    private const int MaximumTerms = 4;
    private const int MaximumDifferences = 8;

    public static IEnumerable<string> Of(FormFinding finding)
    {
        yield return $"  {finding.Statement.Description}";
        yield return $"    stated    {Short(finding.Statement.Expression)}";
        if (finding.Derived is not { IsExact: true } derived)
        {
            yield return $"    no form   {finding.Derived?.Reason}";
            yield break;
        }

        yield return $"    derived   {Short(derived.Expression)}";
        foreach (FormDifference difference in finding.TermDifferences.Take(MaximumDifferences))
        {
            yield return difference.Stated is null ? $"    missing   {difference.Derived}"
                : difference.Derived is null ? $"    extra     {difference.Stated}"
                : $"    differs   {difference}";
        }

        if (finding.TermDifferences.Count > MaximumDifferences)
        {
            int more = finding.TermDifferences.Count - MaximumDifferences;
            yield return $"    and {more} more term{(more == 1 ? string.Empty : "s")}";
        }

        if (finding.Slips.Count > 0)
        {
            yield return $"    slip      {string.Join(", or ", finding.Slips)}";
        }
    }

    /// <summary>The first terms of an expression, and how many more there are.</summary>
    public static string Short(Expression expression) => expression.Terms.Length <= MaximumTerms
        ? expression.ToString()
        : $"{ExpressionText.Write([.. expression.Terms.Take(MaximumTerms)])} and {expression.Terms.Length - MaximumTerms} more terms";
}
