namespace ScNet.Derivations.Checking;

/// <summary>Two elements whose values were exchanged, all of them or those of one kind.</summary>
internal static class ElementSwaps
{
    public static IEnumerable<SlipHypothesis> Of(Workbench bench, IReadOnlySet<Statement> wrong)
    {
        HashSet<(bool, int)> suspects = [.. wrong.Where(s => s.Element is not null).Select(Key)];
        Statement[] candidates = [.. bench.Statements.Where(s => s.Element is not null && suspects.Contains(Key(s)))];
        IEnumerable<IEnumerable<Statement[]>> divisions =
        [
            candidates.GroupBy(Key).Select(g => g.ToArray()),
            .. candidates.GroupBy(s => s.Kind).Select(kind => kind.GroupBy(Key).Select(g => g.ToArray())),
        ];
        return divisions.SelectMany(elements => Pairs(bench, elements));
    }

    // An element is looked up by what it states and has; its partner states and has the same the other way round.
    private static IEnumerable<SlipHypothesis> Pairs(Workbench bench, IEnumerable<Statement[]> elements)
    {
        Dictionary<(string Stated, string Derived), Queue<Statement[]>> waiting = [];
        foreach (Statement[] element in elements)
        {
            Statement[] sorted = [.. element.OrderBy(s => s.Kind).ThenBy(s => s.Phase)];
            string stated = Signature(sorted, s => s.Value.Value), derived = Signature(sorted, s => bench.Truth.Of(s.Subject));
            if (stated == derived)
            {
                continue;
            }

            if (waiting.TryGetValue((derived, stated), out Queue<Statement[]>? partners) && partners.TryDequeue(out Statement[]? partner))
            {
                Dictionary<Statement, Subject> other = new(ReferenceEqualityComparer.Instance);
                for (int k = 0; k < sorted.Length; k++)
                {
                    other.TryAdd(sorted[k], partner[k].Subject);
                    other.TryAdd(partner[k], sorted[k].Subject);
                }

                yield return new SlipHypothesis(
                    SlipKind.ElementsSwapped,
                    22,
                    $"{partner[0].Element} and {sorted[0].Element} swapped",
                    [.. partner, .. sorted],
                    s => bench.Truth.Of(other[s]));
                continue;
            }

            if (!waiting.TryGetValue((stated, derived), out Queue<Statement[]>? queue))
            {
                waiting.Add((stated, derived), queue = new());
            }

            queue.Enqueue(sorted);
        }
    }

    private static (bool, int) Key(Statement s) => (s.Subject.IsCapacitor, s.Subject.Element);

    private static string Signature(Statement[] statements, Func<Statement, Quantity> value) =>
        string.Join(';', statements.Select(s => $"{s.Kind} {s.Phase} {value(s)}"));
}
