using CsCheck;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>
/// Circuits of elements between any of up to eight nodes, parallel ones, loops and shorts included, with values that lie
/// one, four or eight decades apart; mostly without a meaning, and many without a periodic state.
/// </summary>
internal static class RandomCircuits
{
    private static readonly string[] s_nodes = [Converter.ReferenceNode, "vin", "vout", "a", "b", "c", "d", "e"];

    public static Gen<Circuit> Any { get; } = Gen.Int[0, 10_000_000].Select(seed => Of(new Random(seed), decades: new Random(seed).Next(3) switch { 0 => 0.5, 1 => 2, _ => 4 }));

    /// <summary>Those whose values lie within one decade.</summary>
    public static Gen<Circuit> Mild { get; } = Gen.Int[0, 10_000_000].Select(seed => Of(new Random(seed), decades: 0.5));

    private static Circuit Of(Random random, double decades)
    {
        int phases = random.Next(2, 5), nodes = random.Next(4, s_nodes.Length + 1);
        double[] lengths = [.. Enumerable.Range(0, phases).Select(_ => 0.2 + random.NextDouble())];
        Circuit circuit = new(random.Next(2) == 0 ? LoadKind.Stiff : LoadKind.Current, [.. lengths.Select(x => x / lengths.Sum())]);
        for (int k = random.Next(0, 5); k > 0; k--)
        {
            (string a, string b) = Pair();
            circuit.Capacitor(a, b, Value());
        }

        for (int k = random.Next(0, 3); k > 0; k--)
        {
            (string a, string b) = Pair();
            circuit.Inductor(a, b, Value(), random.Next(2) * Value());
        }

        for (int k = random.Next(2, 12); k > 0; k--)
        {
            circuit.Switch(Node(), Node(), Value(), [.. Enumerable.Range(1, phases).Where(_ => random.Next(2) == 0)]);
        }

        return circuit.Load == LoadKind.Current ? circuit.Capacitor("vout", Converter.ReferenceNode, Value()) : circuit;

        double Value() => Math.Pow(10, decades * ((2 * random.NextDouble()) - 1));

        string Node() => s_nodes[random.Next(nodes)];

        (string A, string B) Pair()
        {
            int first = random.Next(nodes);
            return (s_nodes[first], s_nodes[(first + 1 + random.Next(nodes - 1)) % nodes]);
        }
    }
}
