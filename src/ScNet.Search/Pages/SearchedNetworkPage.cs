using Fractions;
using ScNet.Results.Pages;
using ScNet.Search.Queries;

namespace ScNet.Search.Pages;

/// <summary>A searched network as a person reads it: what it asks for, its capacitors and its switches.</summary>
public static class SearchedNetworkPage
{
    /// <summary>The page.</summary>
    /// <param name="network">The network.</param>
    public static Page Of(SearchedNetwork network)
    {
        ArgumentNullException.ThrowIfNull(network);
        PageColumn[] charges = [.. network.Phases.Select((_, p) => new PageColumn(FormattableString.Invariant($"charge {p + 1}"), true))];
        return new Page(network.ToString(), [
            new PageFigures([.. Enum.GetValues<NetworkMeasure>().Select(m => new PageFigure(
                string.Concat(QueryWords.Of(m)[..1].ToUpperInvariant(), QueryWords.Of(m).AsSpan(1)), Text(network.Measures.Value(m))))]),
            new PageTable(
                "Capacitors: voltage per volt of input; charge per charge of the output in each phase",
                [new("capacitor", false), new("voltage", true), .. charges],
                Enumerable.Range(0, network.CapacitorCount).Select(c => (IEnumerable<PageCell>)
                    [FormattableString.Invariant($"c{c + 1}"), Text(network.CapacitorVoltages[c]), .. network.Charges.Select(q => (PageCell)Text(q[c]))])),
            new PageTable(
                "Switches: what each blocks per volt of input; charge per charge of the output in each phase",
                [new("switch", false), new("first", false), new("second", false), new("closed in", false), new("blocks", true), .. charges],
                network.Switches.Select((s, i) => (IEnumerable<PageCell>)
                [
                    FormattableString.Invariant($"s{i + 1}"), Terminals.NameOf(s.First), Terminals.NameOf(s.Second), string.Join(", ", s.ClosedPhases), Text(s.PeakVoltage),
                    .. s.Charges.Select(q => (PageCell)Text(q)),
                ])),
        ]);
    }

    private static string Text(Fraction value) => Quantity.Exact(value).ToString();
}
