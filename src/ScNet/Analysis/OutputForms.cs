namespace ScNet.Analysis;

/// <summary>Both limits as forms of two flows: one row per output whose voltage falls, one column per output that draws.</summary>
/// <remarks>Equations: docs/theory/several-outputs.md, "The limits as matrices". Cost: the square of the outputs times elements and phases.</remarks>
internal sealed class OutputForms
{
    private readonly OutputTopology _topology;
    private readonly LoadedResults?[] _loaded;
    private readonly Converter _converter;
    private readonly NameIndex _names;
    private readonly int _phases;
    private readonly Quantity[]?[] _charges;
    private readonly Quantity[]?[] _steady;
    private readonly ModeAnalysis _analysis;

    public OutputForms(OutputTopology topology, LoadedResults?[] loaded, ModeAnalysis analysis, NameIndex names)
    {
        (_topology, _loaded, _analysis, _names) = (topology, loaded, analysis, names);
        _converter = analysis.Converter;
        _phases = _converter.Phases.Count;
        int entries = _converter.Capacitors.Count * _phases;
        _charges = [.. loaded.Select(own => own?.SlowBranches[..entries])];
        _steady = [.. loaded.Select((own, k) => own is null ? null
            : topology.Flows[k]!.IsTied ? Zeros(entries)
            : SteadyShare.Of(topology.Converter, topology.Flows[k]!, k == 0 ? Extended(own.SlowBranches) : own.SlowBranches))];
    }

    /// <summary>All charge as impulses, at 1 Hz.</summary>
    public OutputMatrix<double?> Slow() => Matrix(
        k => _loaded[k]!.SlowSwitchingLimit.OhmsAtOneHertz,
        (i, k) => OverCapacitors(c => Add(Product(_charges[i]!, _charges[k]!, c, _ => Quantity.Exact(1, 2)), Skew(i, k, c))));

    /// <summary>With held currents carrying their share steadily, at 1 Hz.</summary>
    public OutputMatrix<double?> Sharing()
    {
        Quantity[]?[] rest = [.. _charges.Select((own, k) => own?.Select((charge, e) => Add(charge, -_steady[k]![e])).ToArray())];
        Quantity Form(int i, int k, int c) => Add(Product(rest[i]!, rest[k]!, c, _ => Quantity.Exact(1, 2)), Skew(i, k, c));
        return Matrix(
            k => k == 0 ? (_analysis.ChargeSharing?.OhmsAtOneHertz ?? _loaded[0]!.SlowSwitchingLimit.OhmsAtOneHertz) : OverCapacitors(c => Form(k, k, c)),
            (i, k) => OverCapacitors(c => Form(i, k, c)));
    }

    /// <summary>Capacitors as constant voltages.</summary>
    public OutputMatrix<double?> Fast() => Matrix(
        k => _loaded[k]!.FastSwitchingLimit.Ohms,
        (i, k) =>
        {
            Quantity[] first = Extended(_loaded[i]!.FastBranches, i), second = Extended(_loaded[k]!.FastBranches, k);
            Quantity[] switches = Switches(i), others = Switches(k);
            Quantity Weight(int phase) => Quantity.Exact(1 / _converter.Phases[phase].Duty);
            int firstInductor = _topology.Converter.Network.FirstInductorBranch;
            double ohms = 0;
            for (int s = 0; s < _converter.Switches.Count; s++)
            {
                ohms += Product(switches, others, s, Weight).ToDouble() * _converter.Switches[s].Ohms;
            }

            for (int c = 0; c < _converter.Capacitors.Count; c++)
            {
                ohms += Product(first, second, c, Weight).ToDouble() * _converter.Capacitors[c].EsrOhms;
            }

            for (int l = 0; l < _converter.Inductors.Count; l++)
            {
                ohms += Product(first, second, firstInductor + l, Weight).ToDouble() * _converter.Inductors[l].Ohms;
            }

            return ohms;
        });

    // Σ_p a_i^p (A_k^p + a_k^p / 2)
    private Quantity Skew(int i, int k, int capacitor)
    {
        Quantity sum = Quantity.Zero, before = Quantity.Zero;
        for (int p = 0; p < _phases; p++)
        {
            Quantity own = _charges[k]![(capacitor * _phases) + p];
            Quantity middle = Add(before, QuantityArithmetic.Multiply(own, Quantity.Exact(1, 2)));
            sum = Add(sum, QuantityArithmetic.Multiply(_charges[i]![(capacitor * _phases) + p], middle));
            before = Add(before, own);
        }

        return sum;
    }

    private Quantity Product(Quantity[] first, Quantity[] second, int element, Func<int, Quantity> weight)
    {
        Quantity sum = Quantity.Zero;
        for (int p = 0; p < _phases; p++)
        {
            Quantity product = QuantityArithmetic.Multiply(first[(element * _phases) + p], second[(element * _phases) + p]);
            sum = Add(sum, QuantityArithmetic.Multiply(product, weight(p)));
        }

        return sum;
    }

    private double OverCapacitors(Func<int, Quantity> coefficient)
    {
        double ohms = 0;
        for (int c = 0; c < _converter.Capacitors.Count; c++)
        {
            ohms += coefficient(c).ToDouble() * _converter.Capacitors[c].ElastancePerFarad;
        }

        return ohms;
    }

    private OutputMatrix<double?> Matrix(Func<int, double> own, Func<int, int, double> pair)
    {
        int count = _loaded.Length;
        var values = new double?[count * count];
        for (int i = 0; i < count; i++)
        {
            for (int k = 0; k < count; k++)
            {
                values[(i * count) + k] = _loaded[i] is null || _loaded[k] is null ? null : i == k ? own(i) : pair(i, k);
            }
        }

        return new(values, _names);
    }

    private Quantity[] Switches(int output)
    {
        PhaseTable table = _loaded[output]!.ChargeFlow.Switches;
        return [.. table.SelectMany(s => s)];
    }

    // the charges of the main output's flow, with the further outputs at rest, as branches of the network with ports
    private Quantity[] Extended(Quantity[] branches, int output = 0)
    {
        int ports = _topology.Converter.Network.InputBranch - _converter.Network.InputBranch, first = _converter.Network.InputBranch * _phases;
        return output > 0 || ports == 0 ? branches : [.. branches[..first], .. Zeros(ports * _phases), .. branches[first..]];
    }

    private static Quantity Add(Quantity left, Quantity right) => QuantityArithmetic.Add(left, right);

    private static Quantity[] Zeros(int count) => [.. Enumerable.Repeat(Quantity.Zero, count)];
}
