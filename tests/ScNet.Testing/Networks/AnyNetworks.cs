using CsCheck;

namespace ScNet.Testing.Networks;

/// <summary>
/// Random converters without any care for sense: parallel elements, switches with both terminals on one
/// node, shorts, floating parts, phases in which nothing is closed.
/// </summary>
internal static class AnyNetworks
{
    /// <summary>The elements of a converter, from which it can be built in another order and with other names.</summary>
    internal sealed record Sample(LoadKind Load, int Phases, (string Name, int First, int Second)[] Capacitors, (string Name, int First, int Second, PhaseSet On)[] Switches)
    {
        private static readonly string[] s_ports = [Converter.ReferenceNode, "vin", "vout"];

        /// <summary>The name of a node; the nodes besides the ports carry a prefix.</summary>
        public static string Node(int node, string prefix = "n") => node < s_ports.Length ? s_ports[node] : $"{prefix}{node}";

        public Converter Build() => Build(Capacitors, Switches, "n");

        public Converter Build((string Name, int First, int Second)[] capacitors, (string Name, int First, int Second, PhaseSet On)[] switches, string prefix)
        {
            ConverterBuilder builder = Converter.Create("any").Input("vin").Output("vout", Load).Phases(Phases)
                .Switch("idle1", "vin", "idle").Switch("idle2", "vout", "idle");
            foreach ((string name, int first, int second) in capacitors)
            {
                builder.Capacitor(name, Node(first, prefix), Node(second, prefix));
            }

            foreach ((string name, int first, int second, PhaseSet on) in switches)
            {
                builder.Switch(name, Node(first, prefix), Node(second, prefix), on);
            }

            return builder.Build();
        }

        public override string ToString() =>
            $"{Load}, {Phases} phases; {string.Join(", ", Capacitors)}; {string.Join(", ", Switches.Select(s => $"({s.Name}, {s.First}, {s.Second}, {s.On})"))}";
    }

    public static Gen<Sample> Gen { get; } = CsCheck.Gen.Int[3, 9].SelectMany(nodes =>
        CsCheck.Gen.Select(
            CsCheck.Gen.Bool,
            CsCheck.Gen.Int[2, 4],
            CsCheck.Gen.Select(CsCheck.Gen.Int[0, nodes - 1], CsCheck.Gen.Int[1, nodes - 1]).Array[0, 8],
            CsCheck.Gen.Select(CsCheck.Gen.Int[0, nodes - 1], CsCheck.Gen.Int[0, nodes - 1], CsCheck.Gen.Int[0, 15]).Array[0, 9],
            (isStiff, phases, capacitors, switches) => new Sample(
                isStiff ? LoadKind.Stiff : LoadKind.Current,
                phases,
                [.. capacitors.Select((c, i) => ($"c{i}", c.Item1, (c.Item1 + c.Item2) % nodes))],
                [.. switches.Select((s, i) => ($"s{i}", s.Item1, s.Item2, Phases(s.Item3, phases)))])));

    private static PhaseSet Phases(int bits, int count) =>
        PhaseSet.Of([.. Enumerable.Range(0, count).Where(j => (bits & (1 << j)) != 0).Select(j => j + 1)]);
}
