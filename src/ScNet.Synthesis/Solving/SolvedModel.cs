using System.Collections.ObjectModel;
using System.Globalization;
using Google.OrTools.Sat;
using ScNet.Synthesis.Candidates;

namespace ScNet.Synthesis.Solving;

/// <summary>What the solver says of a model.</summary>
/// <param name="IsSettled">It found the least cost, or that there is none.</param>
/// <param name="Choice">The cheapest solution found; null where none was.</param>
/// <param name="Bound">What every solution costs at least.</param>
/// <param name="Effort">The work that was done, in deterministic units of the solver.</param>
internal sealed record SolvedModel(bool IsSettled, Choice? Choice, int Bound, double Effort)
{
    /// <summary>Looks for the least cost.</summary>
    /// <param name="model">The model.</param>
    /// <param name="bound">What is known that it costs at least.</param>
    /// <param name="effort">The most work.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <remarks>
    /// Whether there is a solution at the bound is asked first, then at one more, and so on: a small allowance makes
    /// short work of most choices, and the last of these questions is the proof that any other way needs as well. Where
    /// half of the work is not enough, the rest goes into a cheap solution.
    /// </remarks>
    public static SolvedModel Of(SynthesisModel model, int bound, double effort, CancellationToken cancellation)
    {
        Constraint allowance = model.Model.Add(model.Cost <= bound);
        double spent = 0;
        int largest = int.MaxValue;
        while (bound <= largest && spent < effort / 2)
        {
            Allow(allowance, bound);
            (CpSolverStatus status, Choice? choice, double work, _) = Solve(model, (effort / 2) - spent, cancellation);
            spent += work;
            if (status == CpSolverStatus.Infeasible && largest == int.MaxValue)
            {
                // before going on upwards: is there any?
                largest = model.LargestCost;
                Allow(allowance, largest);
                (CpSolverStatus any, _, work, _) = Solve(model, Math.Max(effort - spent, 1e-9), cancellation);
                spent += work;
                if (any == CpSolverStatus.Infeasible)
                {
                    return new SolvedModel(true, null, bound, spent);
                }
            }

            if (choice is not null)
            {
                return new SolvedModel(true, choice, bound, spent);
            }

            if (status != CpSolverStatus.Infeasible)
            {
                break;
            }

            bound++;
        }

        Allow(allowance, model.LargestCost);
        model.Model.Minimize(model.Cost);
        model.Model.Add(model.Cost >= bound);
        (CpSolverStatus last, Choice? cheapest, double rest, int proved) = Solve(model, Math.Max(effort - spent, 1e-9), cancellation);
        return last switch
        {
            CpSolverStatus.Optimal => new SolvedModel(true, cheapest, proved, spent + rest),
            CpSolverStatus.Infeasible => new SolvedModel(true, null, bound, spent + rest),
            _ => new SolvedModel(false, cheapest, Math.Max(bound, proved), spent + rest),
        };
    }

    private static void Allow(Constraint allowance, int cost) => allowance.Proto.Linear.Domain[1] = cost;

    // what violates changes of ratio is forbidden and the question asked again
    private static (CpSolverStatus Status, Choice? Choice, double Effort, int Proved) Solve(SynthesisModel model, double effort, CancellationToken cancellation)
    {
        double spent = 0;
        while (true)
        {
            (CpSolverStatus status, Choice? choice, double work, int proved, bool isAccepted) = SolveOnce(model, effort - spent, cancellation);
            spent += work;
            if (isAccepted)
            {
                return (status, choice, spent, proved);
            }

            if (spent >= effort)
            {
                return (CpSolverStatus.Unknown, null, spent, proved);
            }
        }
    }

    private static (CpSolverStatus Status, Choice? Choice, double Effort, int Proved, bool IsAccepted) SolveOnce(SynthesisModel model, double effort, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();

        // one worker without a look at the clock does the same on every run; simplifying the model first takes longer than solving it
        CpSolver solver = new()
        {
            StringParameters = string.Create(
                CultureInfo.InvariantCulture,
                $"num_workers:1,random_seed:1,linearization_level:0,cp_model_presolve:false,max_deterministic_time:{effort:R}"),
        };
        using CancellationTokenRegistration registration = cancellation.Register(solver.StopSearch);
        CpSolverStatus status = solver.Solve(model.Model);
        cancellation.ThrowIfCancellationRequested();
        if (status == CpSolverStatus.ModelInvalid)
        {
            throw new InvalidOperationException($"Expected the model to be valid, but the solver says: {model.Model.Validate()}");
        }

        bool isSolved = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
        Choice? choice = isSolved ? Read(model, solver) : null;
        return (
            status,
            choice,
            solver.Response!.DeterministicTime,
            isSolved ? (int)Math.Ceiling(solver.BestObjectiveBound - 1e-6) : 0,
            choice is null || model.Changes is null || model.Changes.Accept(choice, solver));
    }

    private static Choice Read(SynthesisModel model, CpSolver solver)
    {
        ReadOnlyCollection<IReadOnlyList<PhaseState>> modes = Array.AsReadOnly<IReadOnlyList<PhaseState>>([.. model.Modes.Select(mode => Array.AsReadOnly<PhaseState>(
            [.. mode.States.Select(phase => phase.First(s => solver.BooleanValue(s.Chosen)).State)]))]);
        return new Choice(Array.AsReadOnly<SwitchPlace>([.. model.Places.Where((_, e) => solver.BooleanValue(model.Exists[e]))]), modes)
        {
            Closings = model.Changes?.Read(solver, modes),
        };
    }
}
