namespace ScNet.Search.Tests.Queries;

/// <summary>Every network of one and two capacitors, from all pairs of wirings, in both layouts.</summary>
internal static class EveryNetwork
{
    private static readonly Lazy<IReadOnlyList<SearchedNetwork>> s_upto2 = new(() => [.. Of(1), .. Of(2)]);

    public static IReadOnlyList<SearchedNetwork> Upto2 => s_upto2.Value;

    private static IEnumerable<SearchedNetwork> Of(int capacitors)
    {
        Wiring[] wirings = [.. AllWirings.Of(capacitors)];
        foreach (Wiring first in wirings)
        {
            foreach (Wiring second in wirings)
            {
                foreach (SwitchLayout layout in Enum.GetValues<SwitchLayout>())
                {
                    if (SearchedNetwork.TryCreate([first, second], layout, out SearchedNetwork? network))
                    {
                        yield return network;
                    }
                }
            }
        }
    }
}
