using ScottPlot;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Colours that stand for inks while the plotting library draws, which keeps no names.</summary>
internal sealed class InkKeys
{
    // no colour that has a name in SVG begins so
    private const byte Red = 1;

    private readonly List<Ink> _inks = [];

    /// <summary>The colour that stands for an ink.</summary>
    public Color Of(Ink ink)
    {
        int index = _inks.IndexOf(ink);
        if (index < 0)
        {
            index = _inks.Count;
            _inks.Add(ink);
        }

        return new Color(Red, (byte)(index / 256), (byte)(index % 256));
    }

    /// <summary>The ink for which a colour, "#rrggbb", stands.</summary>
    public Ink Of(string colour) => _inks[int.Parse(colour.AsSpan(3), System.Globalization.NumberStyles.HexNumber, System.Globalization.CultureInfo.InvariantCulture)];
}
