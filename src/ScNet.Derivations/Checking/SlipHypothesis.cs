namespace ScNet.Derivations.Checking;

/// <summary>A slip that might have been made: what would then have been stated.</summary>
/// <param name="Kind">The kind of slip.</param>
/// <param name="Rank">The order among slips that explain the same statements: the lower, the likelier.</param>
/// <param name="Description">The slip in words.</param>
/// <param name="Scope">The statements that it touches.</param>
/// <param name="Value">The value that it gives for a statement.</param>
/// <param name="IsWide">Whether it is about a group of elements; then a few other mistakes may hide in it.</param>
internal sealed record SlipHypothesis(
    SlipKind Kind, int Rank, string Description, IReadOnlyList<Statement> Scope, Func<Statement, Quantity> Value, bool IsWide = false)
{
    // of a wide slip, one altered value in five may be wrong in another way
    private const int MistakesPerExplained = 4;

    /// <summary>The wrong statements that it explains; none where too much speaks against it.</summary>
    public Statement[] Explains(Workbench bench, IReadOnlySet<Statement> wrong)
    {
        List<Statement> explained = [];
        int against = 0;
        foreach (Statement statement in Scope)
        {
            Quantity value = Value(statement);
            bool isAsStated = bench.AreEqual(value, statement.Value.Value);
            if (isAsStated && wrong.Contains(statement))
            {
                explained.Add(statement);
            }
            else if (!isAsStated && value.IsDetermined && !bench.AreEqual(value, bench.Truth.Of(statement.Subject)))
            {
                against++;
            }
        }

        bool isCredible = IsWide
            ? against * MistakesPerExplained <= explained.Count
                && explained.Select(s => (s.Subject.IsCapacitor, s.Element, s.Kind is StatementKind.InputCharge)).Distinct().Count() > 1
            : against == 0;
        return isCredible ? [.. explained] : [];
    }
}
