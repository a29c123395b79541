namespace ScNet.Tests.Documentation;

/// <summary>A piece of C# on a page and the output that the page promises for it.</summary>
/// <param name="Page">The page, relative to the root of the repository.</param>
/// <param name="Line">The line of the opening fence, from 1.</param>
/// <param name="Code">The code between the fences.</param>
/// <param name="ExpectedOutput">The text block that follows at once; null where there is none.</param>
internal sealed record Snippet(string Page, int Line, string Code, string? ExpectedOutput);
