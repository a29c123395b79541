using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>What input and all outputs of a mode see of one another, from exponentials of its state equation.</summary>
internal sealed class ExponentialMultiPort
{
    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly PeriodSolver _solver;

    private ExponentialMultiPort(Converter converter, Mode mode, PeriodSolver solver, List<int> supplied, List<Diagnostic> diagnostics)
    {
        (_converter, _mode, _solver, Supplied, Diagnostics) = (converter, mode, solver, supplied, diagnostics);
    }

    /// <summary>The further outputs, by position, that are there in the results, in their order.</summary>
    public List<int> Supplied { get; }

    /// <summary>A warning per further output that is not.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>Prepares a mode; further outputs whose current has no path or no supply are left out.</summary>
    /// <exception cref="ScNetException">It has no periodic state.</exception>
    public static ExponentialMultiPort Of(Converter converter, Mode mode)
    {
        List<int> supplied = [.. Enumerable.Range(0, converter.FurtherOutputs.Count)];
        List<Diagnostic> diagnostics = [];
        while (true)
        {
            (SwitchedLinearNetwork network, NetworkValues<DoubleDouble> values) = ConverterNetwork.Of(converter, mode, supplied);
            PeriodSolver solver = PeriodSolver.Of(network, values);
            int left = solver.FaultInput >= NetworkStructure.SourceCount ? solver.FaultInput - NetworkStructure.SourceCount : Floating(solver);
            if (left < 0)
            {
                FaultReport.Require(converter, mode, solver.Fault, solver.FaultPhase);
                return new(converter, mode, solver, supplied, diagnostics);
            }

            diagnostics.Add(FaultReport.OfOutput(converter, supplied[left], solver.Fault, solver.FaultPhase));
            supplied.RemoveAt(left);
        }
    }

    /// <summary>The figures at a frequency; outputs are the main one and <see cref="Supplied"/>.</summary>
    /// <exception cref="ScNetException">There is no periodic state.</exception>
    public MultiPortValues At(double frequencyHz)
    {
        NetworkFault fault = Solve(_solver.Plain, PlainReal.Of(1 / frequencyHz), out MultiPortValues? found);
        return fault == NetworkFault.None && found!.RelativeError <= PeriodSolver.WantedError ? found : Fine(frequencyHz);
    }

    private MultiPortValues Fine(double frequencyHz)
    {
        FaultReport.Require(_converter, _mode, Solve(_solver.Fine, DoubleDouble.Of(1) / DoubleDouble.Of(frequencyHz), out MultiPortValues? found), phase: -1);
        return found!;
    }

    // an output current that drowns in the rounding of plain precision may be there in doubled precision
    private NetworkFault Solve<T>(StateEquations<T> equations, T period, out MultiPortValues? found)
        where T : struct, IReal<T>
    {
        found = null;
        PeriodMap<T> map = new(equations);
        if (!map.TryRun(period))
        {
            return NetworkFault.Resonance;
        }

        bool isStiff = _solver.Structure.Network.IsStiff;
        if (isStiff && !(Math.Abs(map.Output[NetworkStructure.Load].Nearest) > map.Error.Output[NetworkStructure.Load]))
        {
            return NetworkFault.NoOutputCurrent;
        }

        found = MultiPortValues.Of(map, period, isStiff);
        return found.IsFinite ? NetworkFault.None : NetworkFault.Resonance;
    }

    // an output between parts of which some phase fixes no voltage
    private static int Floating(PeriodSolver solver) =>
        Array.FindIndex([.. solver.Structure.Network.FurtherLoads.Select((_, k) => k)], k => solver.Fine.Phases.Any(p => p.FurtherOutputs[k].Length == 0));
}
