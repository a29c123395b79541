using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Working;

/// <summary>A part of a document, whatever language it is written in.</summary>
internal abstract record Block;

/// <summary>A heading; level 1 is the title.</summary>
internal sealed record Heading(int Level, Line Text) : Block;

/// <summary>A paragraph.</summary>
internal sealed record Paragraph(Line Text) : Block;

/// <summary>A list without numbers.</summary>
internal sealed record Bullets(IReadOnlyList<Line> Items) : Block;

/// <summary>A table; every row has as many cells as the header.</summary>
internal sealed record Table(IReadOnlyList<string> Header, IReadOnlyList<IReadOnlyList<Line>> Rows) : Block;

/// <summary>Equations below one another.</summary>
internal sealed record Equations(IReadOnlyList<EquationRow> Rows) : Block;

/// <summary>One equation: its label, both sides, and a remark.</summary>
internal sealed record EquationRow(string Label, Expression Left, Expression Right, Line Remark);
