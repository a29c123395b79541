namespace ScNet.Reporting.Drawings;

/// <summary>The nodes of a net and its voltage as lines of text.</summary>
internal static class NetLabel
{
    /// <summary>The lines, each with its box from the origin; none for a net without anything to say.</summary>
    /// <param name="net">The net.</param>
    /// <param name="widthPixels">Where to break, between two names.</param>
    public static IReadOnlyList<SheetLabel> Lines(CircuitNet net, int widthPixels)
    {
        List<string> lines = [""];
        for (int i = 0; i < net.Nodes.Count; i++)
        {
            string word = net.Nodes[i] + (i + 1 < net.Nodes.Count ? " =" : "");
            string longer = lines[^1].Length == 0 ? word : $"{lines[^1]} {word}";
            if (lines[^1].Length > 0 && TextSize.Width(longer) > widthPixels)
            {
                lines.Add(word);
            }
            else
            {
                lines[^1] = longer;
            }
        }

        return [.. lines.Select((text, i) =>
        {
            string strong = i == lines.Count - 1 ? net.Voltage : "";
            return new SheetLabel(new SheetBox(0, 0, TextSize.Width(text, LabelRole.Node, strong), TextSize.Line), text, LabelRole.Node, strong);
        })];
    }
}
