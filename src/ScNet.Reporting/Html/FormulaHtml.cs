using System.Net;
using System.Text;

namespace ScNet.Reporting.Html;

/// <summary>A formula in a line of text, with lowered and raised parts.</summary>
internal static class FormulaHtml
{
    /// <summary>The formula as HTML: after "_" and "^" the letters and digits that follow, or what stands in braces, are lowered and raised.</summary>
    public static string Of(string formula)
    {
        StringBuilder html = new();
        for (int i = 0; i < formula.Length;)
        {
            string? tag = formula[i] switch { '_' => "sub", '^' => "sup", _ => null };
            if (tag is null || i + 1 == formula.Length || (formula[i + 1] != '{' && !char.IsLetterOrDigit(formula[i + 1])))
            {
                html.Append(WebUtility.HtmlEncode(formula[i].ToString()));
                i++;
                continue;
            }

            int start = i + 1, end;
            if (formula[start] == '{')
            {
                end = formula.IndexOf('}', start) is var brace and >= 0 ? brace : formula.Length;
                start++;
                i = Math.Min(end + 1, formula.Length);
            }
            else
            {
                end = start;
                while (end < formula.Length && char.IsLetterOrDigit(formula[end]))
                {
                    end++;
                }

                i = end;
            }

            html.Append('<').Append(tag).Append('>').Append(WebUtility.HtmlEncode(formula[start..end])).Append("</").Append(tag).Append('>');
        }

        return html.ToString();
    }
}
