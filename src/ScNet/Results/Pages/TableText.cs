using System.Text;

namespace ScNet.Results.Pages;

/// <summary>A table as lines of text: columns as wide as their longest cell, two blanks between them, in pieces where they do not fit side by side.</summary>
internal static class TableText
{
    private const int Gap = 2;

    // words are broken into lines of this width before a table is broken into pieces
    private const int NarrowestWords = 24;

    /// <summary>The pieces, each with the lines of its headings and those of its rows.</summary>
    public static IEnumerable<(IReadOnlyList<string> Heading, IReadOnlyList<string> Rows)> Of(IReadOnlyList<PageColumn> columns, IReadOnlyList<string[]> rows, int nameColumns, int width)
    {
        string[] headings = [.. columns.Select(c => Printable.Of(c.Heading))];
        string[][] cells = [.. rows.Select(r => r.Select(Printable.Of).ToArray())];
        int[] natural = [.. columns.Select((_, c) => cells.Select(r => TextWidth.Of(r[c])).Append(TextWidth.Of(headings[c])).Max())];
        int[] all = [.. Enumerable.Range(0, columns.Count)];
        int[] names = all[..nameColumns];
        int[] widths = [.. natural];
        if (Total(widths, all) > width)
        {
            int most = width * 2 / 5;
            Shrink(widths, names, names, most, least: 1);
            Shrink(widths, all, [.. all[nameColumns..].Where(c => !columns[c].IsFigure)], width, NarrowestWords);
        }

        if (Total(widths, all) <= width)
        {
            yield return Piece(all);
            yield break;
        }

        foreach (int c in all[nameColumns..])
        {
            widths[c] = natural[c];
        }

        int room = width - (names.Length > 0 ? Total(widths, names) + Gap : 0);
        List<int> piece = [];
        foreach (int[] group in Groups(columns, all[nameColumns..]))
        {
            if (piece.Count > 0 && Total(widths, [.. piece, .. group]) > room && (Total(widths, group) <= room || Total(widths, [.. piece, group[0]]) > room))
            {
                yield return Piece([.. names, .. piece]);
                piece.Clear();
            }

            foreach (int c in group)
            {
                widths[c] = Math.Min(widths[c], room);
                if (piece.Count > 0 && Total(widths, [.. piece, c]) > room)
                {
                    yield return Piece([.. names, .. piece]);
                    piece.Clear();
                }

                piece.Add(c);
            }
        }

        yield return Piece([.. names, .. piece]);

        (IReadOnlyList<string> Heading, IReadOnlyList<string> Rows) Piece(int[] shown) =>
            (Lines(headings, shown), [.. cells.SelectMany(r => Lines(r, shown))]);

        IReadOnlyList<string> Lines(string[] row, int[] shown)
        {
            IReadOnlyList<string>[] parts = [.. shown.Select(c => TextLines.Of(row[c], widths[c]))];
            return [.. Enumerable.Range(0, parts.Length == 0 ? 0 : parts.Max(p => p.Count)).Select(k =>
            {
                StringBuilder line = new();
                for (int i = 0; i < shown.Length; i++)
                {
                    string part = k < parts[i].Count ? parts[i][k] : string.Empty;
                    string blanks = new(' ', widths[shown[i]] - TextWidth.Of(part));
                    bool isFigure = columns[shown[i]].IsFigure;
                    line.Append(' ', i > 0 ? Gap : 0).Append(isFigure ? blanks : string.Empty).Append(part).Append(isFigure ? string.Empty : blanks);
                }

                return line.ToString().TrimEnd();
            })];
        }
    }

    private static int Total(int[] widths, int[] columns) => columns.Sum(c => widths[c]) + (Gap * Math.Max(0, columns.Length - 1));

    // makes the widest of some columns narrower until all of a set fit, but none narrower than the least
    private static void Shrink(int[] widths, int[] set, int[] narrowed, int width, int least)
    {
        while (Total(widths, set) > width && narrowed.Length > 0)
        {
            int widest = narrowed.MaxBy(c => widths[c]);
            if (widths[widest] <= least)
            {
                return;
            }

            widths[widest]--;
        }
    }

    private static IEnumerable<int[]> Groups(IReadOnlyList<PageColumn> columns, int[] indices)
    {
        for (int from = 0; from < indices.Length;)
        {
            int to = from + 1;
            while (to < indices.Length && columns[indices[from]].Group is { } group && columns[indices[to]].Group == group)
            {
                to++;
            }

            yield return indices[from..to];
            from = to;
        }
    }
}
