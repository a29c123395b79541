using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// Settles by component values what topology leaves free, and forms flow and limits. Where topology
/// leaves nothing free it only multiplies exact coefficients by the values.
/// </summary>
/// <remarks>
/// The free directions are few and exact; see <see cref="DirectionAmounts"/> for the equations in their
/// space. Cost: rows · directions² with one row per element and phase.
/// </remarks>
internal sealed class ValueDecidedFlow
{
    // A sum below this share of its terms is the rounding of a zero.
    private const double RoundingShare = 1e-15;

    private readonly Converter _converter;
    private readonly SwitchedNetwork _network;
    private readonly TopologySolution _exact;
    private readonly int _phases;

    private ValueDecidedFlow(Converter converter, TopologySolution exact)
    {
        _converter = converter;
        _network = converter.Network;
        _exact = exact;
        _phases = _network.PhaseCount;
    }

    public static LoadedResults Settle(Converter converter, TopologySolution exact) => new ValueDecidedFlow(converter, exact).Settle();

    private LoadedResults Settle()
    {
        Quantity[] slowBranches = _exact.Branches;
        Quantity[] fastBranches = _exact.Branches;
        Quantity[] switches = _exact.Switches;
        bool isMoving = _exact.Directions.Any(d => DirectionAmounts.IsMoving(_network, d));
        if (_exact.Directions.Count > 0)
        {
            double[] fast = DirectionAmounts.Fast(_converter, _exact);
            fastBranches = Combine(_exact.Branches, d => d.Branches, fast, _ => true);
            switches = Combine(_exact.Switches, d => d.Switches, fast, _ => true);
        }

        if (isMoving)
        {
            slowBranches = Combine(
                _exact.Branches, d => d.Branches, DirectionAmounts.Slow(_converter, _exact), d => DirectionAmounts.IsMoving(_network, d));
        }

        ChargeFlow flow = new(
            isMoving ? FlowDetermination.ComponentValues : FlowDetermination.Topology,
            Negated(fastBranches, _network.InputBranch),
            new PhaseValues(fastBranches, _network.OutputBranch * _phases, _converter.Phases.Names),
            new PhaseTable(slowBranches, _converter.Capacitors.Names, _converter.Phases.Names),
            new PhaseTable(switches, _converter.Switches.Names, _converter.Phases.Names));
        return new LoadedResults(flow, Slow(slowBranches), Fast(switches, fastBranches));
    }

    private SlowSwitchingLimit Slow(Quantity[] charges)
    {
        Quantity[] coefficients = Coefficients(_exact.SlowCoefficients, charges, _ => 0.5);
        double ohms = 0;
        for (int i = 0; i < coefficients.Length; i++)
        {
            ohms += coefficients[i].ToDouble() * _converter.Capacitors[i].ElastancePerFarad;
        }

        return new SlowSwitchingLimit(new NamedList<Quantity>(coefficients, _converter.Capacitors.Names), ohms);
    }

    private FastSwitchingLimit Fast(Quantity[] switches, Quantity[] branches)
    {
        double InverseDuty(int phase) => 1 / _network.Duties[phase].ToDouble();
        Quantity[] switchCoefficients = Coefficients(_exact.FastSwitchCoefficients, switches, InverseDuty);
        Quantity[] capacitorCoefficients = Coefficients(_exact.FastCapacitorCoefficients, branches, InverseDuty);
        double ohms = 0;
        for (int s = 0; s < switchCoefficients.Length; s++)
        {
            ohms += switchCoefficients[s].ToDouble() * _converter.Switches[s].Ohms;
        }

        for (int i = 0; i < capacitorCoefficients.Length; i++)
        {
            ohms += capacitorCoefficients[i].ToDouble() * _converter.Capacitors[i].EsrOhms;
        }

        return new FastSwitchingLimit(
            new NamedList<Quantity>(switchCoefficients, _converter.Switches.Names),
            new NamedList<Quantity>(capacitorCoefficients, _converter.Capacitors.Names),
            ohms);
    }

    // The exact coefficient stands where all charges of the element are exact.
    private Quantity[] Coefficients(Quantity[] exact, Quantity[] charges, Func<int, double> weight)
    {
        if (_exact.Directions.Count == 0)
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
        Quantity[] particular, Func<FlowDirection, double[]> entries, double[] amounts, Predicate<FlowDirection> takesPart)
    {
        IReadOnlyList<FlowDirection> directions = _exact.Directions;
        var combined = (Quantity[])particular.Clone();
        var added = new double[particular.Length];
        double[] magnitude = [.. particular.Select(q => Math.Abs(q.ToDouble()))];
        var isTouched = new bool[particular.Length];
        for (int k = 0; k < directions.Count; k++)
        {
            if (!takesPart(directions[k]))
            {
                continue;
            }

            double[] direction = entries(directions[k]);
            for (int e = 0; e < direction.Length; e++)
            {
                added[e] += amounts[k] * direction[e];
                magnitude[e] += Math.Abs(amounts[k] * direction[e]);
                isTouched[e] |= direction[e] != 0;
            }
        }

        for (int e = 0; e < combined.Length; e++)
        {
            if (isTouched[e])
            {
                double sum = particular[e].ToDouble() + added[e];
                combined[e] = Quantity.Numeric(Math.Abs(sum) > RoundingShare * magnitude[e] ? sum : 0);
            }
        }

        return combined;
    }
}
