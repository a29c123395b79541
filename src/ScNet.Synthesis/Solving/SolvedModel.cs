using Google.OrTools.Sat;
using ScNet.Synthesis.Candidates;

namespace ScNet.Synthesis.Solving;

/// <summary>What the solver says of a model.</summary>
/// <param name="IsSettled">It found the least cost, or that there is none.</param>
/// <param name="Cost">The least cost found; null where none was.</param>
/// <param name="Bound">What every solution costs at least.</param>
/// <param name="Effort">The work that was done, in deterministic units of the solver.</param>
/// <param name="Choice">The solution with that cost.</param>
internal sealed record SolvedModel(bool IsSettled, int? Cost, int Bound, double Effort, Choice? Choice)
{
    /// <summary>Looks for the least cost.</summary>
    /// <param name="model">The model.</param>
    /// <param name="leastCost">What is known that it costs at least.</param>
    /// <param name="effort">The most work.</param>
    /// <param name="cancellation">Stops it.</param>
    public static SolvedModel Of(SynthesisModel model, int leastCost, double effort, CancellationToken cancellation)
    {
        model.Model.Minimize(model.Cost);
        model.Model.Add(model.Cost >= leastCost);

        // one worker without a look at the clock does the same on every run
        CpSolver solver = new()
        {
            StringParameters = string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"num_workers:1,random_seed:1,linearization_level:0,cp_model_probing_level:0,symmetry_level:0,max_deterministic_time:{effort:R}"),
        };
        using CancellationTokenRegistration registration = cancellation.Register(solver.StopSearch);
        CpSolverStatus status = solver.Solve(model.Model);
        cancellation.ThrowIfCancellationRequested();
        double spent = solver.Response!.DeterministicTime;
        return status switch
        {
            CpSolverStatus.Optimal or CpSolverStatus.Feasible => new SolvedModel(
                status == CpSolverStatus.Optimal,
                (int)Math.Round(solver.ObjectiveValue),
                Math.Max(leastCost, (int)Math.Ceiling(solver.BestObjectiveBound - 1e-6)),
                spent,
                Read(model, solver)),
            CpSolverStatus.Infeasible => new SolvedModel(true, null, leastCost, spent, null),
            CpSolverStatus.Unknown => new SolvedModel(false, null, Math.Max(leastCost, (int)Math.Ceiling(solver.BestObjectiveBound - 1e-6)), spent, null),
            _ => throw new InvalidOperationException($"Expected the model to be valid, but the solver says: {model.Model.Validate()}"),
        };
    }

    private static Choice Read(SynthesisModel model, CpSolver solver) => new(
        Array.AsReadOnly<SwitchPlace>([.. model.Places.Where((_, e) => solver.BooleanValue(model.Exists[e]))]),
        Array.AsReadOnly<IReadOnlyList<PhaseState>>([.. model.Modes.Select(mode => Array.AsReadOnly<PhaseState>(
            [.. mode.States.Select(phase => phase.First(s => solver.BooleanValue(s.Chosen)).State)]))]));
}
