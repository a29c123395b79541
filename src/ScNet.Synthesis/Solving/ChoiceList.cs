using System.Collections.ObjectModel;
using System.Globalization;
using Google.OrTools.Sat;
using ScNet.Synthesis.Candidates;

namespace ScNet.Synthesis.Solving;

/// <summary>Every choice that costs no more than a limit, those that differ in names, directions or phases only once.</summary>
/// <param name="Choices">The choices, in the order in which they were come to; wires that close a mesh of wires and switches beside others are among them.</param>
/// <param name="IsComplete">Whether there are no others.</param>
/// <param name="Effort">The work that was done, in deterministic units of the solver.</param>
internal sealed record ChoiceList(IReadOnlyList<Choice> Choices, bool IsComplete, double Effort)
{
    /// <summary>Lists them.</summary>
    /// <param name="model">The model, see <see cref="SynthesisModel.ForListing"/>.</param>
    /// <param name="mostCost">The limit.</param>
    /// <param name="effort">The most work.</param>
    /// <param name="most">The most choices that are of use; more are not looked for.</param>
    /// <param name="cancellation">Stops it.</param>
    public static ChoiceList Of(SynthesisModel model, int mostCost, double effort, int most, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        model.Model.Add(model.Cost <= mostCost);
        using CpSolver solver = new()
        {
            StringParameters = string.Create(
                CultureInfo.InvariantCulture,
                $"num_workers:1,random_seed:1,linearization_level:0,cp_model_presolve:false,enumerate_all_solutions:true,max_deterministic_time:{effort:R}"),
        };
        Collector found = new(model, most);
        using CancellationTokenRegistration registration = cancellation.Register(solver.StopSearch);
        CpSolverStatus status = solver.Solve(model.Model, found);
        cancellation.ThrowIfCancellationRequested();
        return new ChoiceList(found.Choices.AsReadOnly(), status is CpSolverStatus.Optimal or CpSolverStatus.Infeasible && !found.IsFull, solver.Response!.DeterministicTime);
    }

    private sealed class Collector(SynthesisModel model, int most) : CpSolverSolutionCallback
    {
        private readonly ChoiceKind _kinds = new(model.CapacitorCount);
        private readonly HashSet<string> _seen = [];

        public List<Choice> Choices { get; } = [];

        public bool IsFull { get; private set; }

        public override void OnSolutionCallback()
        {
            ReadOnlyCollection<IReadOnlyList<PhaseState>> modes = Array.AsReadOnly<IReadOnlyList<PhaseState>>([.. model.Modes.Select(mode => Array.AsReadOnly<PhaseState>(
                [.. mode.States.Select(phase => phase.First(s => BooleanValue(s.Chosen)).State)]))]);
            Choice choice = new(Array.AsReadOnly<SwitchPlace>([.. model.Places.Where((_, e) => BooleanValue(model.Exists[e]))]), modes);
            if (_kinds.Of(choice) is { } kind && _seen.Add(kind))
            {
                if (Choices.Count == most)
                {
                    IsFull = true;
                    StopSearch();
                    return;
                }

                Choices.Add(choice);
            }
        }
    }
}
