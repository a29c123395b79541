namespace ScNet.Search.Shards;

/// <summary>Pairs of wirings one by one: for few capacitors.</summary>
internal sealed class WiringPairs : IShardWork
{
    public long PairCount(int capacitors, int phases)
    {
        long wirings = Wirings(capacitors).Length;
        return wirings * (wirings + 1) / 2;
    }

    public ShardFinding Find(AtlasShard shard, IProgress<double>? progress, CancellationToken cancellationToken)
    {
        Wiring[] wirings = Wirings(shard.CapacitorCount);
        long pairs = 0, networks = 0, position = 0;
        Dictionary<Fractions.Fraction, List<SearchedNetwork>> fronts = [];
        for (int i = 0; i < wirings.Length; i++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            for (int j = i; j < wirings.Length; j++)
            {
                if (position++ % shard.Count != shard.Number - 1)
                {
                    continue;
                }

                pairs++;
                if (SearchedNetwork.TryCreate([wirings[i], wirings[j]], SwitchLayout.LowestBlocking, out SearchedNetwork? network))
                {
                    networks++;
                    List<SearchedNetwork> front = fronts.GetValueOrDefault(network.Ratio) ?? [];
                    fronts[network.Ratio] = [.. Front([.. front, network])];
                }
            }

            progress?.Report((i + 1.0) / wirings.Length);
        }

        return new ShardFinding(pairs, networks, [.. fronts.Values.SelectMany(f => f)]);
    }

    public IEnumerable<SearchedNetwork> Front(IReadOnlyList<SearchedNetwork> networks) => networks.Where(n => !networks.Any(m => Beats(m, n)));

    private static bool Beats(SearchedNetwork a, SearchedNetwork b)
    {
        NetworkMeasures x = a.Measures, y = b.Measures;
        bool isNoWorse = x.CapacitorChargeVoltage <= y.CapacitorChargeVoltage && x.SwitchChargeVoltage <= y.SwitchChargeVoltage && x.SwitchCount <= y.SwitchCount
            && x.HighestCapacitorVoltage <= y.HighestCapacitorVoltage && x.HighestSwitchVoltage <= y.HighestSwitchVoltage && x.PlateSwing <= y.PlateSwing
            && x.CapacitorCharge <= y.CapacitorCharge && x.SwitchCharge <= y.SwitchCharge;
        return isNoWorse && (x != y || ShardEntry.Of(a).CompareTo(ShardEntry.Of(b)) < 0);
    }

    private static Wiring[] Wirings(int capacitors)
    {
        List<Wiring> found = [];
        From(new int[Terminals.Count(capacitors)], 1, 1);
        return [.. found];

        void From(int[] nodes, int terminal, int used)
        {
            if (terminal == nodes.Length)
            {
                if (Wiring.Of(nodes) is { IsAdmissible: true } wiring)
                {
                    found.Add(wiring);
                }

                return;
            }

            for (int node = 0; node <= used; node++)
            {
                nodes[terminal] = node;
                From(nodes, terminal + 1, Math.Max(used, node + 1));
            }
        }
    }
}
