namespace ScNet.SteadyState.Exponential;

/// <summary>The two-port of a mode from exponentials of its state equation.</summary>
internal sealed class ExponentialTwoPort : ITwoPortMethod
{
    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly SlopeSolver _slopes;

    private ExponentialTwoPort(Converter converter, Mode mode, PeriodSolver solver, SlopeSolver slopes)
    {
        _slopes = slopes;
        _converter = converter;
        _mode = mode;
        Solver = solver;
    }

    public PeriodSolver Solver { get; }

    /// <summary>Prepares a mode.</summary>
    /// <exception cref="ScNetException">It has no periodic state.</exception>
    public static ExponentialTwoPort Of(Converter converter, Mode mode)
    {
        (SwitchedLinearNetwork network, NetworkValues<Numerics.DoubleDouble> values) = ConverterNetwork.Of(converter, mode);
        PeriodSolver solver = PeriodSolver.Of(network, values);
        FaultReport.Require(converter, mode, solver.Fault, solver.FaultPhase);
        return new(converter, mode, solver, new SlopeSolver(solver.Structure, values));
    }

    public TwoPortPoint At(double frequencyHz)
    {
        FaultReport.Require(_converter, _mode, Solver.Solve(frequencyHz, out PeriodFigures found), phase: -1);
        return new TwoPortPoint(frequencyHz, found.Ratios, found.Ohms, found.RelativeError, () => Details(found));
    }

    /// <summary>What is worked out on demand, also of a network whose two-port another method finds.</summary>
    public TwoPortDetails DetailsAt(double frequencyHz)
    {
        FaultReport.Require(_converter, _mode, Solver.Solve(frequencyHz, out PeriodFigures found), phase: -1);
        return Details(found);
    }

    /// <summary>The derivatives at a frequency.</summary>
    public TwoPortSensitivity SensitivityAt(double frequencyHz)
    {
        _ = FineAt(frequencyHz);
        return new TwoPortSensitivity(_converter, _slopes, frequencyHz);
    }

    /// <summary>The derivative of the impedance by each duty.</summary>
    public PerPhase<double> OhmsByDuty(double frequencyHz)
    {
        _ = FineAt(frequencyHz);
        return new([.. _converter.Phases.Select((_, j) => _slopes.ByDuty(j, frequencyHz).Ohms)], _converter.Phases.Names);
    }

    /// <summary>The figures in doubled precision.</summary>
    public PeriodFigures FineAt(double frequencyHz)
    {
        FaultReport.Require(_converter, _mode, Solver.SolveFine(frequencyHz, out PeriodFigures found), phase: -1);
        return found;
    }

    private TwoPortDetails Details(PeriodFigures found)
    {
        var voltages = new double?[_converter.Capacitors.Count];
        int n = found.OpenState.Length;
        for (int i = 0; i < voltages.Length; i++)
        {
            if (Solver.Structure.FreeVoltages.Any(pattern => pattern[i] != 0))
            {
                continue;
            }

            Numerics.DoubleDouble[] row = Solver.Fine.CapacitorVoltage(i);
            double sum = row[n + NetworkStructure.Input].Nearest + (row[n + NetworkStructure.Load].Nearest * found.Ratios.Voltage);
            for (int x = 0; x < n; x++)
            {
                sum += row[x].Nearest * found.OpenState[x];
            }

            voltages[i] = sum;
        }

        (double decay, double periods) = SlowestDecay.Of([.. found.Inverse], (int)Math.Sqrt(found.Inverse.Length));
        return new(new NamedList<double?>(voltages, _converter.Capacitors.Names), decay, periods);
    }
}
