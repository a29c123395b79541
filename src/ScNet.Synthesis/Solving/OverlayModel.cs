using System.Globalization;
using Google.OrTools.Sat;
using ScNet.Reconfiguration;
using ScNet.Search;

namespace ScNet.Synthesis.Solving;

/// <summary>
/// The choice of a map of each network's capacitors and of switches that join every group of every phase
/// (docs/theory/smallest-converters.md, "Given networks").
/// </summary>
internal sealed class OverlayModel
{
    private readonly CpModel _model = new();
    private readonly OverlayGroups[] _networks;
    private readonly int _capacitors;
    private readonly IReadOnlyList<SwitchPlace> _places;
    private readonly BoolVar[] _exists;
    private readonly Dictionary<int, BoolVar> _connected = [];

    // per network its maps, as the shared terminal of each own one
    private readonly (int[] Terminals, BoolVar Chosen)[][] _maps;

    private OverlayModel(OverlayGroups[] networks)
    {
        _networks = networks;
        _capacitors = networks.Max(n => n.CapacitorCount);
        _places = SwitchPlace.Pairs(_capacitors);
        _exists = [.. _places.Select(_ => _model.NewBoolVar(""))];

        // names and directions of shared capacitors are free: the largest network lies on them as it is
        int largest = Array.FindIndex(networks, n => n.CapacitorCount == _capacitors);
        _maps = [.. networks.Select((n, i) => MapsOf(n.CapacitorCount, isFixed: i == largest).Select(m => (m, _model.NewBoolVar(""))).ToArray())];
        for (int i = 0; i < networks.Length; i++)
        {
            _model.AddExactlyOne(_maps[i].Select(m => m.Chosen));
            Ask(networks[i], _maps[i]);
        }

        foreach ((int block, BoolVar connected) in _connected)
        {
            SwitchPlace.JoinWithin(_model, _places, block, connected, _exists);
        }
    }

    /// <summary>Looks for fewer switches than are known to do, from the least that any network takes alone upwards.</summary>
    /// <param name="networks">What each network joins.</param>
    /// <param name="known">How many switches are known to do.</param>
    /// <param name="effort">The most work, in deterministic units of the solver.</param>
    /// <param name="cancellation">Stops it.</param>
    public static OverlayAnswer Fewer(OverlayGroups[] networks, int known, double effort, CancellationToken cancellation)
    {
        int bound = 0;
        foreach (OverlayGroups network in networks.Length > 1 ? networks : [])
        {
            OverlayModel alone = new([network]);
            while (bound < known && effort > 0 && alone.Solve(bound, ref effort, cancellation) == CpSolverStatus.Infeasible)
            {
                bound++;
            }
        }

        OverlayModel together = new(networks);
        for (; bound < known && effort > 0; bound++)
        {
            switch (together.Solve(bound, ref effort, cancellation))
            {
                case CpSolverStatus.Optimal or CpSolverStatus.Feasible:
                    return new OverlayAnswer(together._plan, IsProved: true);
                case CpSolverStatus.Infeasible:
                    break;
                default:
                    return new OverlayAnswer(null, IsProved: false);
            }
        }

        return new OverlayAnswer(null, IsProved: bound >= known);
    }

    // every group of a network is joined wherever its map takes it
    private void Ask(OverlayGroups network, (int[] Terminals, BoolVar Chosen)[] maps)
    {
        foreach (int[] group in network.Phases.SelectMany(p => p))
        {
            foreach ((int[] terminals, BoolVar chosen) in maps)
            {
                int block = group.Aggregate(0, (set, t) => set | (1 << terminals[t]));
                if (!_connected.TryGetValue(block, out BoolVar? connected))
                {
                    _connected.Add(block, connected = _model.NewBoolVar(""));
                }

                _model.AddImplication(chosen, connected);
            }
        }
    }

    private Constraint? _allowance;

    // what the last solution chose
    private OverlayPlan? _plan;

    private CpSolverStatus Solve(int bound, ref double effort, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        _allowance ??= _model.Add(LinearExpr.Sum(_exists) <= bound);
        _allowance.Proto.Linear.Domain[1] = bound;
        using CpSolver solver = new()
        {
            StringParameters = string.Create(CultureInfo.InvariantCulture, $"num_workers:1,random_seed:1,linearization_level:0,max_deterministic_time:{effort:R}"),
        };
        using CancellationTokenRegistration registration = cancellation.Register(solver.StopSearch);
        CpSolverStatus status = solver.Solve(_model);
        cancellation.ThrowIfCancellationRequested();
        effort -= solver.Response!.DeterministicTime;
        _plan = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? Read(solver) : null;
        return status == CpSolverStatus.ModelInvalid
            ? throw new InvalidOperationException($"Expected the model to be valid, but the solver says: {_model.Validate()}")
            : status;
    }

    private OverlayPlan Read(CpSolver solver) => new(
        _capacitors,
        [.. _networks.Select((n, i) => n.Renamed(_maps[i].Single(m => solver.BooleanValue(m.Chosen)).Terminals))],
        [.. _places.Where((_, e) => solver.BooleanValue(_exists[e])).Select(p => (p.First, p.Second)).Order()]);

    // own capacitors onto distinct shared ones in either direction
    private IEnumerable<int[]> MapsOf(int own, bool isFixed) => CapacitorMap.All(_capacitors)
        .Select(map => Enumerable.Range(0, OverlayGroups.PortCount + (2 * own)).Select(map.Terminal).ToArray())
        .Where(t => !isFixed || t.Select((terminal, i) => terminal == i).All(same => same))
        .DistinctBy(t => string.Join(' ', t));
}
