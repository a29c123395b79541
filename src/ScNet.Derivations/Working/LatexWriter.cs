using System.Text;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Working;

/// <summary>Writes a document as a LaTeX article that needs the packages amsmath, fontenc and longtable.</summary>
internal static class LatexWriter
{
    // more terms than these go to the next line
    private const int TermsPerLine = 6;

    private static readonly string[] s_headings = ["section*", "subsection*", "subsubsection*"];

    public static string Write(IEnumerable<Block> blocks)
    {
        StringBuilder text = new();
        text.Append("""
            \documentclass{article}
            \usepackage[T1]{fontenc}
            \usepackage[margin=2.5cm]{geometry}
            \usepackage{amsmath}
            \usepackage{longtable}
            \allowdisplaybreaks
            \setlength{\parindent}{0pt}
            \setlength{\parskip}{1ex}
            \begin{document}

            """.ReplaceLineEndings("\n"));
        foreach (Block block in blocks)
        {
            text.Append('\n');
            Write(text, block);
        }

        return text.Append("\n\\end{document}\n").ToString();
    }

    private static void Write(StringBuilder text, Block block)
    {
        switch (block)
        {
            case Heading heading:
                text.Append('\\').Append(s_headings[heading.Level - 1]).Append('{').Append(Inline(heading.Text)).Append("}\n");
                break;
            case Paragraph paragraph:
                text.Append(Inline(paragraph.Text)).Append('\n');
                break;
            case Bullets bullets:
                text.Append("\\begin{itemize}\n");
                foreach (Line item in bullets.Items)
                {
                    text.Append("\\item ").Append(Inline(item)).Append('\n');
                }

                text.Append("\\end{itemize}\n");
                break;
            case Table table:
                text.Append("\\begin{longtable}{").Append('l', table.Header.Count).Append("}\n");
                text.Append(string.Join(" & ", table.Header.Select(NameText.Latex))).Append(" \\\\\n\\hline\n\\endhead\n");
                foreach (IReadOnlyList<Line> row in table.Rows)
                {
                    text.Append(string.Join(" & ", row.Select(Inline))).Append(" \\\\\n");
                }

                text.Append("\\end{longtable}\n");
                break;
            case Equations equations:
                text.Append("\\begin{alignat*}{3}\n");
                text.Append(string.Join(" \\\\\n", equations.Rows.Select(Write)));
                text.Append("\n\\end{alignat*}\n");
                break;
        }
    }

    private static string Write(EquationRow row)
    {
        string label = row.Label.Length > 0 ? $"\\text{{{NameText.Latex(row.Label)}}}\\quad" : string.Empty;
        string remark = row.Remark.Spans.Count > 0 ? $"\\quad\\text{{{Inline(row.Remark)}}}" : string.Empty;
        return $"&{label}&&{Side(row.Left)} = {Side(row.Right)}&&{remark}";
    }

    private static string Side(Expression side)
    {
        if (side.Terms.Length <= TermsPerLine)
        {
            return side.ToLatex();
        }

        StringBuilder text = new();
        for (int k = 0; k < side.Terms.Length; k++)
        {
            if (k > 0 && k % TermsPerLine == 0)
            {
                text.Append(" \\\\\n&&&\\qquad");
            }

            text.Append(ExpressionLatex.Write(side.Terms[k], isFirst: k == 0));
        }

        return text.ToString();
    }

    private static string Inline(Line line) => string.Concat(line.Spans.Select(s => s.Kind switch
    {
        SpanKind.Name => $"\\texttt{{{NameText.Latex(s.Text)}}}",
        SpanKind.Math => $"${s.Math!.ToLatex()}$",
        _ => NameText.Latex(s.Text).Replace("Ω", "$\\Omega$", StringComparison.Ordinal),
    }));
}
