using System.Xml;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Names from outside as text of a document: characters that XML forbids are replaced.</summary>
internal static class XmlText
{
    public static string Of(string text) => new([.. text.Select((c, i) => IsAllowed(text, i) ? c : '\uFFFD')]);

    private static bool IsAllowed(string text, int i) => XmlConvert.IsXmlChar(text[i])
        || (i + 1 < text.Length && XmlConvert.IsXmlSurrogatePair(text[i + 1], text[i]))
        || (i > 0 && XmlConvert.IsXmlSurrogatePair(text[i], text[i - 1]));
}
