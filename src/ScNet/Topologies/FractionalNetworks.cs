namespace ScNet.Topologies;

/// <summary>
/// The best two-phase network for every ratio of magnitude up to 1 that three flying capacitors give,
/// found by an exhaustive search; the ratios above 1 are these run backwards.
/// </summary>
/// <remarks>
/// Best means the fewest capacitors, then the fewest switches, then the lowest Σ|charge · blocked voltage|
/// over the switches, then the lowest Σ|charge · voltage| over the capacitors; the two sums stand beside
/// each row, per unit of output charge and volt of input. A test of ScNet.Search goes through all networks
/// again and finds none better.
/// </remarks>
internal static class FractionalNetworks
{
    // Capacitors | switches closed in phase 1 | in phase 2: each as two nodes, the positive plate first, and of
    // a switch the node of the higher potential while it is open.
    private static readonly Dictionary<(int Numerator, int Denominator), string> s_networks = new()
    {
        [(-1, 1)] = "p1 n1 | gnd n1, vin p1 | p1 gnd, n1 vout", // 4, 1
        [(-2, 3)] = "p1 n1, p2 n2, p3 n3 | gnd n1, p2 gnd, vin p1, n3 vout, p3 n2 | gnd n2, gnd n3, n1 vout, p1 p2, p1 p3", // 26/9, 8/9
        [(-1, 2)] = "p1 n1, p2 n2 | gnd n1, p2 gnd, vin p1, n2 vout | gnd n2, n1 vout, p1 p2", // 2, 3/4
        [(-1, 3)] = "p1 n1, p2 n1, p3 n3 | gnd n1, vin p1, n3 vout, p3 p2 | p2 gnd, gnd n3, n1 vout, p1 p3", // 4/3, 2/3
        [(-1, 4)] = "p1 n1, p2 n2, p3 n3 | gnd n1, vin p3, n2 vout, p2 p1, p1 n3 | p1 gnd, gnd n2, n1 vout, n3 vout, p3 p2", // 9/8, 7/16
        [(1, 5)] = "p1 n1, p2 n2, p3 n3 | n3 gnd, vin p2, vout n1, p1 n2, p3 p1 | n1 gnd, n2 gnd, p1 vout, vout n3, p2 p3", // 18/25, 7/25
        [(1, 4)] = "p1 n1, p2 n1, p3 n3 | n3 gnd, vin p2, vout n1, p3 p1 | n1 gnd, p1 vout, vout n3, p2 p3", // 3/4, 3/8
        [(1, 3)] = "p1 n1, p2 n2 | n1 gnd, vin p2, p1 vout, vout n2 | n2 gnd, vout n1, p2 p1", // 8/9, 1/3
        [(2, 5)] = "p1 n1, p2 n2, p3 n3 | n2 gnd, vin p1, vout n1, p3 vout, p2 n3 | n1 gnd, vout n2, vout n3, p1 p2, p1 p3", // 26/25, 8/25
        [(1, 2)] = "p1 n1 | vin p1, vout n1 | n1 gnd, p1 vout", // 1, 1/4
        [(3, 5)] = "p1 n1, p2 n2, p3 n3 | vin p1, p2 vout, p3 vout, n2 n1, n3 n1 | n1 gnd, vin p2, p1 vout, vout n3, p3 n2", // 26/25, 8/25
        [(2, 3)] = "p1 n1, p2 n2 | n1 gnd, vin p2, p1 vout, vout n2 | vin p1, p2 vout, n2 n1", // 8/9, 1/3
        [(3, 4)] = "p1 n1, p2 n2, p1 n3 | vin p1, p2 vout, vout n3, n2 n1 | n1 gnd, vin p2, p1 vout, n3 n2", // 3/4, 3/8
        [(4, 5)] = "p1 n1, p2 n2, p3 n3 | vin p1, vin p2, vout n1, p3 vout, n3 n2 | n2 gnd, vin p3, p1 vout, p2 n1, n1 n3", // 18/25, 7/25
        [(1, 1)] = "p1 gnd | vin p1 | vout p1", // 0, 1
    };

    /// <summary>The ratios of the table.</summary>
    public static IEnumerable<(int Numerator, int Denominator)> Ratios => s_networks.Keys;

    /// <summary>The row of a ratio in lowest terms, of magnitude up to 1.</summary>
    public static string Row(int numerator, int denominator) => s_networks[(numerator, denominator)];

    /// <summary>Adds the network of a ratio in lowest terms, of magnitude up to 1, between the high and the low node.</summary>
    public static void AddTo(FamilyFrame frame, int numerator, int denominator, bool stepUp)
    {
        // Run backwards, a negative ratio gives every potential the other sign.
        bool isTurned = stepUp && numerator < 0;
        string[] parts = Row(numerator, denominator).Split(" | ");
        int count = 0;
        foreach ((string first, string second) in Pairs(parts[0]))
        {
            frame.Capacitor($"fly{++count}", first, second);
        }

        count = 0;
        for (int phase = 1; phase <= 2; phase++)
        {
            foreach ((string first, string second) in Pairs(parts[phase]))
            {
                frame.Switch($"s{++count}", first, second, phase);
            }
        }

        IEnumerable<(string First, string Second)> Pairs(string part) =>
            from pair in part.Split(", ")
            let nodes = pair.Split(' ').Select(Node).ToArray()
            select isTurned ? (nodes[1], nodes[0]) : (nodes[0], nodes[1]);

        string Node(string name) => name switch
        {
            "vin" => frame.High,
            "vout" => frame.Low,
            _ => name,
        };
    }
}
