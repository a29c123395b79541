namespace ScNet.Search.Queries;

/// <summary>Which of the networks that measure the same stands in an answer, and which way its capacitors are turned.</summary>
internal static class ShownNetwork
{
    /// <summary>The member of a standard family that measures the same in everything, of no more capacitors than are asked for; else the network itself, all capacitor voltages positive.</summary>
    /// <param name="network">A network of the atlas.</param>
    /// <param name="capacitors">The most capacitors.</param>
    public static SearchedNetwork Of(SearchedNetwork network, int capacitors) =>
        Upright(Enumerable.Range(1, capacitors).Select(c => KnownFamilies.Of(c).MeasuringAs(network)).FirstOrDefault(n => n is not null) ?? network);

    private static SearchedNetwork Upright(SearchedNetwork network)
    {
        CapacitorMap turns = CapacitorMap.Of([.. Enumerable.Range(0, network.CapacitorCount)], [.. network.CapacitorVoltages.Select(v => v.IsNegative)]);
        return SearchedNetwork.TryCreate([.. network.Phases.Select(p => p.Moved(turns))], network.Layout, network.SwitchVoltageLimit, out SearchedNetwork? upright) ? upright : network;
    }
}
