using System.Globalization;
using System.Runtime.CompilerServices;
using Fractions;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Working;

/// <summary>What a <see cref="Span"/> of a line is.</summary>
internal enum SpanKind
{
    Text,
    Name,
    Math,
}

/// <summary>A piece of a line: text, a name as the user wrote it, or an expression.</summary>
internal readonly record struct Span(SpanKind Kind, string Text, Expression? Math = null);

/// <summary>A name of the user's, to be told apart from text.</summary>
internal readonly record struct Named(string Name);

/// <summary>A line of text with names and expressions in it, written as an interpolated string.</summary>
[InterpolatedStringHandler]
internal sealed class Line
{
    private readonly List<Span> _spans;

    public Line(int literalLength, int formattedCount) => _spans = new((2 * formattedCount) + Math.Sign(literalLength));

    public static Line Empty { get; } = new(0, 0);

    public IReadOnlyList<Span> Spans => _spans;

    public static implicit operator Line(string text)
    {
        Line line = new(text.Length, 0);
        line.AppendLiteral(text);
        return line;
    }

    public static Line Of(Line line) => line;

    public void AppendLiteral(string text) => _spans.Add(new Span(SpanKind.Text, text));

    public void AppendFormatted(string text) => AppendLiteral(text);

    public void AppendFormatted(int number) => AppendLiteral(number.ToString(CultureInfo.InvariantCulture));

    public void AppendFormatted(Quantity quantity) => AppendLiteral(quantity.ToString());

    public void AppendFormatted(Fraction fraction) => AppendFormatted(Quantity.Exact(fraction));

    public void AppendFormatted(Expression math) => _spans.Add(new Span(SpanKind.Math, string.Empty, math));

    public void AppendFormatted(Symbol symbol) => AppendFormatted(Expression.Of(symbol));

    public void AppendFormatted(Named name) => _spans.Add(new Span(SpanKind.Name, name.Name));

    public void AppendFormatted(Line line) => _spans.AddRange(line._spans);

    public void AppendFormatted(IEnumerable<Named> names)
    {
        bool isFirst = true;
        foreach (Named name in names)
        {
            if (!isFirst)
            {
                AppendLiteral(", ");
            }

            AppendFormatted(name);
            isFirst = false;
        }
    }

    /// <summary>The line without any mark-up.</summary>
    public string ToPlainText() => string.Concat(_spans.Select(s => s.Kind switch
    {
        SpanKind.Name => NameText.Quoted(s.Text),
        SpanKind.Math => s.Math!.ToString(),
        _ => s.Text,
    }));
}
