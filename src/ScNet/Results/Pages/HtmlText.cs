using System.Net;

namespace ScNet.Results.Pages;

/// <summary>Text from outside within HTML, between elements and within attributes: markup as what it looks like, and nothing that does not show.</summary>
internal static class HtmlText
{
    /// <summary>The text, escaped.</summary>
    public static string Of(string text) => WebUtility.HtmlEncode(Printable.Of(text));
}
