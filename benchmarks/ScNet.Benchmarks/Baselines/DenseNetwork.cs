namespace ScNet.Benchmarks.Baselines;

/// <summary>
/// One mode of a converter with a stiff load as plain numbers, ready for dense matrices. Branches are
/// the capacitors, then the output, then the input; node 0 is the reference.
/// </summary>
public sealed class DenseNetwork
{
    private DenseNetwork(Converter converter, Mode mode)
    {
        Dictionary<string, int> node = new(converter.Nodes.Select((name, n) => KeyValuePair.Create(name, n)));
        NodeCount = converter.Nodes.Count;
        Input = node[converter.InputNode];
        Output = node[converter.OutputNode];
        Branches = [.. converter.Capacitors.Select(c => (node[c.PositiveNode], node[c.BottomNode])), (Output, 0), (Input, 0)];
        Switches = [.. converter.Switches.Select(s => (node[s.FirstNode], node[s.SecondNode]))];
        Closed = [.. converter.Phases.Select(p => mode.ClosedPhases.Select(on => on.Contains(p.Number)).ToArray())];
        Duties = [.. converter.Phases.Select(p => p.Duty.ToDouble())];
        Farads = [.. converter.Capacitors.Select(c => c.Farads)];
        Ohms = [.. converter.Switches.Select(s => s.Ohms)];
    }

    /// <summary>The number of nodes.</summary>
    public int NodeCount { get; }

    /// <summary>The input node.</summary>
    public int Input { get; }

    /// <summary>The output node.</summary>
    public int Output { get; }

    /// <summary>First and second node of every branch.</summary>
    public (int First, int Second)[] Branches { get; }

    /// <summary>First and second node of every switch.</summary>
    public (int First, int Second)[] Switches { get; }

    /// <summary>Whether a switch is closed, index by phase, then by switch.</summary>
    public bool[][] Closed { get; }

    /// <summary>The duty of every phase.</summary>
    public double[] Duties { get; }

    /// <summary>Capacitances in farads.</summary>
    public double[] Farads { get; }

    /// <summary>On-resistances in ohms.</summary>
    public double[] Ohms { get; }

    /// <summary>The number of phases.</summary>
    public int PhaseCount => Closed.Length;

    /// <summary>The network of one mode.</summary>
    public static DenseNetwork Of(Converter converter, Mode mode) => new(converter, mode);

    /// <summary>The contracted node of every node in a phase, numbered from 0, which holds the reference; and how many there are.</summary>
    public (int[] Group, int Count) Contract(int phase)
    {
        var parent = new int[NodeCount];
        for (int n = 0; n < parent.Length; n++)
        {
            parent[n] = n;
        }

        for (int s = 0; s < Switches.Length; s++)
        {
            if (Closed[phase][s])
            {
                int first = Root(Switches[s].First), second = Root(Switches[s].Second);
                parent[Math.Max(first, second)] = Math.Min(first, second);
            }
        }

        // a root is the least node of its group, so it is numbered before the others
        var group = new int[NodeCount];
        int count = 0;
        for (int n = 0; n < group.Length; n++)
        {
            group[n] = parent[n] == n ? count++ : group[Root(n)];
        }

        return (group, count);

        int Root(int node)
        {
            while (parent[node] != node)
            {
                node = parent[node] = parent[parent[node]];
            }

            return node;
        }
    }
}
