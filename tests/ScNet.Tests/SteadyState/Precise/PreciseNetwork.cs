using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>
/// A mode by its node equations C u' = -G u - A i - D I and L i' = Aᵀu - R i alone, in numbers of 640 binary places: u the
/// potentials of nodes, i the currents of inductors, I the load currents. Nothing of the library is used but the list of
/// elements.
/// </summary>
/// <remarks>
/// Nodes that capacitors join make a group. With y the potentials of its nodes against its first one and z the potential of
/// that one, the equations of z hold no derivative and are eliminated. Where resistors of a phase join groups to nothing whose
/// potential is held, the sum of these equations is a condition on currents of inductors and loads alone; i = F m + f I meets
/// those that hold in every phase, and a phase with others leaves a current without a path. Taking the sum out of the equations
/// of i (F is orthogonal to it) rids them of the potential of such a part, which follows from L i' + R i.
/// </remarks>
internal sealed class PreciseNetwork
{
    // currents without a path, and potentials that nothing fixes, leave pivots of rounding
    private const double Zero = 1e-100;

    private readonly Converter _converter;
    private readonly PreciseGraph _graph;
    private readonly PreciseValues _values;
    private readonly BigMatrix _meshes;
    private readonly BigMatrix _loaded;
    private readonly BigMatrix _inverseCapacitance;
    private readonly BigMatrix _inverseInductance;
    private readonly BigMatrix _henries;
    private readonly BigMatrix _windings;

    private PreciseNetwork(Converter converter, Mode mode, PreciseValues values)
    {
        _converter = converter;
        _values = values;
        _graph = new PreciseGraph(converter, mode);
        BigMatrix tied = _graph.Floating(_graph.JoinedInAnyPhase).Transposed();
        _meshes = (tied * _graph.Inductors).NullSpace(Zero);
        _loaded = -(tied * _graph.Inductors).Solve(tied * _graph.Loads, Zero);
        BigMatrix capacitance = new(_graph.NodeCount, _graph.NodeCount);
        foreach ((int first, int second, BigReal farads) in _graph.Capacitances(values))
        {
            Stamp(capacitance, first, second, farads);
        }

        _inverseCapacitance = (_graph.States.Transposed() * capacitance * _graph.States).Inverse();
        _henries = BigMatrix.Diagonal(values.Henries);
        _windings = BigMatrix.Diagonal(values.WindingOhms);
        _inverseInductance = (_meshes.Transposed() * _henries * _meshes).Inverse();
        HasPaths = true;
        Phases = [.. Enumerable.Range(0, converter.Phases.Count).Select(Phase)];
    }

    /// <summary>Whether every phase gives every current a path; without, nothing else means anything.</summary>
    public bool HasPaths { get; private set; }

    public int StateCount => _graph.States.Columns + _meshes.Columns;

    /// <summary>Input voltage; output voltage or load current; further load currents.</summary>
    public int InputCount => _graph.Loads.Columns;

    public PrecisePhase[] Phases { get; }

    public bool IsStiff => _converter.Load == LoadKind.Stiff;

    /// <summary>Writes down a mode.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="values">Its values; null for those of the converter.</param>
    public static PreciseNetwork Of(Converter converter, Mode mode, PreciseValues? values = null) => new(converter, mode, values ?? PreciseValues.Of(converter));

    /// <summary>What every port shows in a phase: the current out of the input source; the current into a stiff output or its potential; the voltage of each further load.</summary>
    /// <remarks>Without currents of capacitors, which average to nothing.</remarks>
    public BigMatrix Shown(PrecisePhase phase)
    {
        BigMatrix shown = new(InputCount, StateCount + InputCount);
        int input = _graph[_converter.InputNode], output = _graph[_converter.OutputNode];
        for (int k = 0; k < shown.Columns; k++)
        {
            shown[0, k] = phase.NodeCurrents[input, k];
            shown[1, k] = IsStiff ? -phase.NodeCurrents[output, k] : phase.Potentials[output, k];
            for (int port = 2; port < InputCount; port++)
            {
                FurtherOutput own = _converter.FurtherOutputs[port - 2];
                shown[port, k] = phase.Potentials[_graph[own.Node], k] - phase.Potentials[_graph[own.ReturnNode], k];
            }
        }

        return shown;
    }

    /// <summary>The voltage of every capacitor behind its series resistance, which is the same row in every phase.</summary>
    public BigMatrix CapacitorVoltages(PrecisePhase phase) => _graph.Across(phase.Potentials);

    /// <summary>The current of every switch, nothing in open ones.</summary>
    public BigMatrix SwitchCurrents(int phase)
    {
        BigMatrix currents = new(_converter.Switches.Count, StateCount + InputCount), potentials = Phases[phase].Potentials;
        for (int s = 0; s < currents.Rows; s++)
        {
            (int first, int second) = (_graph[_converter.Switches[s].FirstNode], _graph[_converter.Switches[s].SecondNode]);
            for (int k = 0; k < currents.Columns && _graph.IsClosed(s, phase); k++)
            {
                currents[s, k] = (potentials[first, k] - potentials[second, k]) / _values.OnOhms[s];
            }
        }

        return currents;
    }

    private PrecisePhase Phase(int phase)
    {
        BigMatrix conductance = new(_graph.NodeCount, _graph.NodeCount);
        foreach ((int first, int second, BigReal ohms) in _graph.Resistors(phase, _values))
        {
            Stamp(conductance, first, second, BigReal.One / ohms);
        }

        int[] joined = _graph.JoinedIn(phase);
        BigMatrix floating = _graph.Floating(joined), groups = _graph.Following(joined), across = groups.Transposed();
        BigMatrix inductors = new BigMatrix(_meshes.Rows, _graph.States.Columns).Beside(_meshes).Beside(_loaded);
        BigMatrix loads = new BigMatrix(_graph.NodeCount, StateCount).Beside(_graph.Loads);
        BigMatrix known = _graph.States.Beside(new BigMatrix(_graph.NodeCount, _meshes.Columns)).Beside(_graph.Held);
        BigMatrix held = (_graph.Inductors * inductors) + loads;
        HasPaths &= (floating.Transposed() * held).IsWithin(Zero);
        BigMatrix potentials = known - (groups * (across * conductance * groups).Solve(across * ((conductance * known) + held), default));
        BigMatrix currents = (conductance * potentials) + held;
        BigMatrix rest = (_graph.Inductors.Transposed() * potentials) - (_windings * inductors);
        BigMatrix currentRates = _inverseInductance * _meshes.Transposed() * rest;
        BigMatrix rates = -(_inverseCapacitance * _graph.States.Transposed() * currents);
        BigMatrix balance = floating.Transposed() * _graph.Inductors;
        potentials += floating * balance.Transposed().Solve((_henries * _meshes * currentRates) - rest, Zero);
        return new(_values.Duties[phase], rates.Above(currentRates), potentials, inductors, currents);
    }

    private static void Stamp(BigMatrix matrix, int first, int second, BigReal value)
    {
        matrix[first, first] += value;
        matrix[second, second] += value;
        matrix[first, second] -= value;
        matrix[second, first] -= value;
    }
}
