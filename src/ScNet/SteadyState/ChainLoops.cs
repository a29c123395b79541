using ScNet.Kernel;

namespace ScNet.SteadyState;

/// <summary>
/// The loops of one phase as resistors and elastances, if no two of them share a capacitor but for one long
/// loop: what <see cref="LoopChains"/> works on.
/// </summary>
/// <remarks>Cost: linear in the total length of the loops.</remarks>
internal sealed class ChainLoops
{
    // Of two longer loops one is left and their combination. The combinations of three would share a capacitor: every loop holds
    // one that is in no other and closes it, as the ports are in the forest, and that of the first would be in both.
    private const int ShortLength = 4;
    private const int MostLongLoops = 2;

    private readonly List<(int Loop, int Sign)>[] _loopsOf;

    private ChainLoops(List<Loop> loops, Loop? longLoop, int resistors, Converter converter)
    {
        _loopsOf = new List<(int Loop, int Sign)>[resistors];
        LongSigns = new int[resistors];
        Elastance = new double[loops.Count];
        Shared = new double[loops.Count];
        HasLong = longLoop is not null;
        for (int r = 0; r < resistors; r++)
        {
            _loopsOf[r] = [];
        }

        Dictionary<int, int> rest = longLoop is null ? [] : new(longLoop.Capacitors);
        for (int loop = 0; loop < loops.Count; loop++)
        {
            double other = 0;
            foreach ((int capacitor, int sign) in loops[loop].Capacitors)
            {
                double elastance = converter.Capacitors[capacitor].ElastancePerFarad;
                Elastance[loop] += elastance;
                if (rest.Remove(capacitor, out int longSign))
                {
                    Shared[loop] += sign * longSign * elastance;
                }
                else
                {
                    other += elastance;
                }
            }

            // What the long loop's capacitors leave when this loop takes its share, without a difference: a loop shares one path of
            // the forest with the long one, or what the long one has alone, in one direction throughout.
            LongElastance += Math.Abs(Shared[loop]) * (other / Elastance[loop]);
            foreach ((int resistor, int sign) in loops[loop].Resistors)
            {
                _loopsOf[resistor].Add((loop, sign));
            }
        }

        LongElastance += rest.Keys.Sum(c => converter.Capacitors[c].ElastancePerFarad);
        foreach ((int resistor, int sign) in longLoop?.Resistors ?? [])
        {
            LongSigns[resistor] = sign;
        }
    }

    /// <summary>The number of loops without the long one.</summary>
    public int Count => Elastance.Length;

    /// <summary>The elastance of each loop in 1/F.</summary>
    public double[] Elastance { get; }

    /// <summary>The elastance that each loop has in common with the long one, negative where they run against one another.</summary>
    public double[] Shared { get; }

    public bool HasLong { get; }

    /// <summary>The elastance of the long loop when the others have taken their shares (a Schur complement).</summary>
    public double LongElastance { get; }

    /// <summary>The sign with which the long loop runs through each resistor, or 0.</summary>
    public int[] LongSigns { get; }

    /// <summary>The loops that run through a resistor, without the long one.</summary>
    public List<(int Loop, int Sign)> Of(int resistor) => _loopsOf[resistor];

    /// <summary>Finds the loops of a phase; null where several share capacitors, or where loops lack a capacitor or a resistor.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="forest">The phase with its closed switches contracted.</param>
    /// <param name="resistors">The number of resistors that conduct.</param>
    /// <param name="position">The position of a resistor among those that conduct, or -1.</param>
    public static ChainLoops? TryOf(Converter converter, PhaseForest forest, int resistors, Func<int, int> position)
    {
        SwitchedNetwork network = converter.Network;
        if (network.HeldCurrentCount > 0 || forest.HasSwitchLoop)
        {
            return null;
        }

        LoopSet found = LoopSet.Of(network, [forest]);
        LoopResistors walk = new(network, forest);
        List<Loop> loops = [], longLoops = [];
        for (int l = 0; l < found.Count; l++)
        {
            Loop loop = new();
            ReadOnlySpan<int> branches = found.Branches(l), signs = found.Signs(l);
            for (int e = 0; e < branches.Length; e++)
            {
                if (branches[e] < network.CapacitorCount)
                {
                    loop.Capacitors[branches[e]] = signs[e];
                }
            }

            foreach ((int resistor, int sign) in walk.Of(found, l))
            {
                if (position(resistor) is var at and >= 0)
                {
                    loop.Resistors[at] = sign;
                }
            }

            (branches.Length > ShortLength ? longLoops : loops).Add(loop);
        }

        if (longLoops.Count > MostLongLoops)
        {
            return null;
        }

        if (longLoops is [var first, var second])
        {
            Loop sum = second.Plus(first, 1), difference = second.Plus(first, -1);
            loops.Add(sum.Capacitors.Count < difference.Capacitors.Count ? sum : difference);
        }

        HashSet<int> taken = [];
        foreach (Loop loop in loops)
        {
            if (loop.Capacitors.Count == 0 || loop.Resistors.Count == 0 || !loop.IsPlain || !loop.Capacitors.Keys.All(taken.Add))
            {
                return null;
            }
        }

        return loops.Count == 0 ? null : new ChainLoops(loops, longLoops.FirstOrDefault(), resistors, converter);
    }

    /// <summary>The loops in an order in which those that share a resistor are neighbours; null where they branch or close.</summary>
    public int[]? TryOrder(int resistors)
    {
        var neighbours = new List<int>[Count];
        for (int loop = 0; loop < Count; loop++)
        {
            neighbours[loop] = [];
        }

        for (int r = 0; r < resistors; r++)
        {
            List<(int Loop, int Sign)> loops = _loopsOf[r];
            if (loops.Count > 2)
            {
                return null;
            }

            if (loops.Count == 2 && !neighbours[loops[0].Loop].Contains(loops[1].Loop))
            {
                neighbours[loops[0].Loop].Add(loops[1].Loop);
                neighbours[loops[1].Loop].Add(loops[0].Loop);
            }
        }

        if (neighbours.Any(n => n.Count > 2))
        {
            return null;
        }

        List<int> order = [];
        var isPlaced = new bool[Count];
        for (int start = 0; start < Count; start++)
        {
            if (neighbours[start].Count < 2)
            {
                for (int at = isPlaced[start] ? -1 : start; at >= 0; at = Next(at))
                {
                    isPlaced[at] = true;
                    order.Add(at);
                }
            }
        }

        return order.Count == Count ? [.. order] : null;

        int Next(int loop)
        {
            int found = neighbours[loop].FindIndex(l => !isPlaced[l]);
            return found < 0 ? -1 : neighbours[loop][found];
        }
    }

    // Signs by capacitor and by resistor.
    private sealed class Loop
    {
        public Dictionary<int, int> Capacitors { get; } = [];

        public Dictionary<int, int> Resistors { get; } = [];

        // Whether the loop runs through everything once at most.
        public bool IsPlain => Capacitors.Values.Concat(Resistors.Values).All(s => s is 1 or -1);

        public Loop Plus(Loop other, int factor)
        {
            Loop sum = new();
            Add(Capacitors, other.Capacitors, sum.Capacitors);
            Add(Resistors, other.Resistors, sum.Resistors);
            return sum;

            void Add(Dictionary<int, int> own, Dictionary<int, int> others, Dictionary<int, int> result)
            {
                foreach (int key in own.Keys.Union(others.Keys))
                {
                    int sign = own.GetValueOrDefault(key) + (factor * others.GetValueOrDefault(key));
                    if (sign != 0)
                    {
                        result[key] = sign;
                    }
                }
            }
        }
    }
}
