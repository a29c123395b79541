using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.Analysis;

/// <summary>
/// Settles by component values what topology leaves free, and forms flow and limits. Where topology
/// leaves nothing free it only multiplies exact coefficients by the values.
/// </summary>
/// <remarks>
/// The free directions are few and exact; see <see cref="DirectionAmounts"/> for the equations in their
/// space. Cost: rows · by the fill of sparse triangles, linear where the free parts of the converter are independent.
/// </remarks>
internal sealed class ValueDecidedFlow
{
    // A sum below this share of its terms is the rounding of a zero.
    private const double RoundingShare = 1e-15;

    private readonly Converter _converter;
    private readonly SwitchedNetwork _network;
    private readonly TopologySolution _topology;
    private readonly int _phases;

    private ValueDecidedFlow(Converter converter, TopologySolution topology)
    {
        _converter = converter;
        _network = converter.Network;
        _topology = topology;
        _phases = _network.PhaseCount;
    }

    public static LoadedResults Settle(Converter converter, TopologySolution topology) => new ValueDecidedFlow(converter, topology).Settle();

    private LoadedResults Settle()
    {
        if (!_topology.CarriesLoad)
        {
            return WithoutLoad();
        }

        Quantity[] slowBranches = _topology.Branches;
        Quantity[] fastBranches = _topology.Branches;
        Quantity[] switches = _topology.Switches;
        bool isMoving = _topology.Directions.Any(d => DirectionAmounts.IsMoving(_network, d));
        if (_topology.Directions.Count > 0)
        {
            double[] fast = DirectionAmounts.FastWays(_converter, _topology);
            fastBranches = Combine(_topology.Branches, d => d.Branches, fast, _ => true);
            switches = Combine(_topology.Switches, d => d.Switches, fast, _ => true);
        }

        if (isMoving)
        {
            slowBranches = Combine(
                _topology.Branches, d => d.Branches, DirectionAmounts.SlowWays(_converter, _topology), d => DirectionAmounts.IsMoving(_network, d));
        }

        if (_topology.IsTied && _topology.Directions.Count > 0)
        {
            slowBranches = (Quantity[])slowBranches.Clone();
            slowBranches.AsSpan(0, _network.CapacitorCount * _phases).Fill(Quantity.Zero);
        }

        ChargeFlow flow = new(
            isMoving ? FlowDetermination.ComponentValues : FlowDetermination.Topology,
            Negated(fastBranches, _network.InputBranch),
            new PhaseValues(fastBranches, _network.OutputBranch * _phases, _converter.Phases.Names),
            new PhaseTable(slowBranches, _converter.Capacitors.Names, _converter.Phases.Names),
            new PhaseTable(switches, _converter.Switches.Names, _converter.Phases.Names),
            _network.InductorCount == 0 && _topology.Settled is { InductorVoltages: var none } ? none
                : new PhaseTable(fastBranches[(_network.FirstInductorBranch * _phases)..], _converter.Inductors.Names, _converter.Phases.Names));
        return new LoadedResults(flow, Slow(slowBranches), Fast(switches, fastBranches), slowBranches, fastBranches);
    }

    private LoadedResults WithoutLoad()
    {
        NamedList<Quantity> Open(NameIndex names) => new(new Quantity[names.Count], names);
        PhaseTable OpenTable(NameIndex names) => new(new Quantity[names.Count * _phases], names, _converter.Phases.Names);
        PhaseValues port = new(new Quantity[_phases], 0, _converter.Phases.Names);
        return new LoadedResults(
            new ChargeFlow(
                FlowDetermination.Topology, port, port, OpenTable(_converter.Capacitors.Names), OpenTable(_converter.Switches.Names), OpenTable(_converter.Inductors.Names)),
            new SlowSwitchingLimit(Open(_converter.Capacitors.Names), double.PositiveInfinity),
            new FastSwitchingLimit(Open(_converter.Switches.Names), Open(_converter.Capacitors.Names), Open(_converter.Inductors.Names), double.PositiveInfinity),
            [],
            []);
    }

    private SlowSwitchingLimit Slow(Quantity[] charges)
    {
        Quantity[] coefficients = Coefficients(_topology.SlowCoefficients, charges, _ => 0.5);
        double ohms = 0;
        for (int i = 0; i < coefficients.Length; i++)
        {
            ohms += coefficients[i].ToDouble() * _converter.Capacitors[i].ElastancePerFarad;
        }

        return new SlowSwitchingLimit(new NamedList<Quantity>(coefficients, _converter.Capacitors.Names), ohms);
    }

    private FastSwitchingLimit Fast(Quantity[] switches, Quantity[] branches)
    {
        Func<int, double> inverseDuty = phase => 1 / _network.Duties[phase].ToDouble();
        Quantity[] switchCoefficients = Coefficients(_topology.FastSwitchCoefficients, switches, inverseDuty);
        Quantity[] capacitorCoefficients = Coefficients(_topology.FastCapacitorCoefficients, branches, inverseDuty);
        Quantity[] inductorCoefficients = _network.InductorCount == 0 ? []
            : Coefficients(_topology.FastInductorCoefficients, branches[(_network.FirstInductorBranch * _phases)..], inverseDuty);
        double ohms = 0;
        for (int s = 0; s < switchCoefficients.Length; s++)
        {
            ohms += switchCoefficients[s].ToDouble() * _converter.Switches[s].Ohms;
        }

        for (int i = 0; i < capacitorCoefficients.Length; i++)
        {
            ohms += capacitorCoefficients[i].ToDouble() * _converter.Capacitors[i].EsrOhms;
        }

        for (int l = 0; l < inductorCoefficients.Length; l++)
        {
            ohms += inductorCoefficients[l].ToDouble() * _converter.Inductors[l].Ohms;
        }

        return new FastSwitchingLimit(
            new NamedList<Quantity>(switchCoefficients, _converter.Switches.Names),
            new NamedList<Quantity>(capacitorCoefficients, _converter.Capacitors.Names),
            new NamedList<Quantity>(inductorCoefficients, _converter.Inductors.Names),
            ohms);
    }

    // The exact coefficient stands where all charges of the element are exact.
    private Quantity[] Coefficients(Quantity[] exact, Quantity[] charges, Func<int, double> weight)
    {
        if (_topology.Directions.Count == 0)
        {
            return exact;
        }

        var coefficients = new Quantity[exact.Length];
        for (int i = 0; i < coefficients.Length; i++)
        {
            ReadOnlySpan<Quantity> own = charges.AsSpan(i * _phases, _phases);
            bool isExact = true;
            double sum = 0;
            for (int j = 0; j < _phases; j++)
            {
                double charge = own[j].ToDouble();
                sum += charge * charge * weight(j);
                isExact &= own[j].IsExact;
            }

            coefficients[i] = isExact ? exact[i] : Quantity.Numeric(sum);
        }

        return coefficients;
    }

    private PhaseValues Negated(Quantity[] branches, int branch)
    {
        var values = new Quantity[_phases];
        for (int j = 0; j < _phases; j++)
        {
            values[j] = -branches[(branch * _phases) + j];
        }

        return new PhaseValues(values, 0, _converter.Phases.Names);
    }

    // An entry stays exact where no direction touches it.
    private Quantity[] Combine(
        Quantity[] particular, Func<FlowDirection, SparseVector> entries, double[] ways, Predicate<FlowDirection> takesPart)
    {
        var combined = (Quantity[])particular.Clone();
        var isTouched = new bool[particular.Length];
        var sum = new double[particular.Length];
        var magnitude = new double[particular.Length];
        foreach (FlowDirection direction in _topology.Directions)
        {
            foreach (int e in takesPart(direction) ? entries(direction).Indices : [])
            {
                isTouched[e] = true;
            }
        }

        for (int k = 0; k < ways.Length; k++)
        {
            SparseVector way = entries(k == 0 ? _topology.Own! : _topology.Directions[k - 1].Way);
            for (int e = 0; e < way.Count && ways[k] != 0; e++)
            {
                double part = ways[k] * way.Values[e];
                sum[way.Indices[e]] += part;
                magnitude[way.Indices[e]] += Math.Abs(part);
            }
        }

        for (int e = 0; e < combined.Length; e++)
        {
            if (isTouched[e])
            {
                combined[e] = Quantity.Numeric(Math.Abs(sum[e]) > RoundingShare * magnitude[e] ? sum[e] : 0);
            }
        }

        return combined;
    }
}
