namespace ScNet.Reporting.Html;

/// <summary>How a kind of figure came about.</summary>
/// <param name="Figure">What it is called in the report.</param>
/// <param name="Formula">The formula; "_" and "^" before one character or braces lower and raise.</param>
/// <param name="Source">The published source, "derived there" or "common practice, no source".</param>
/// <param name="Theory">The page of the theory, without folder and ending.</param>
/// <param name="Section">Its section.</param>
internal sealed record Origin(string Figure, string Formula, string Source, string Theory, string Section);
