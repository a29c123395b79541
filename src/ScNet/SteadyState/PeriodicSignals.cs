using ScNet.Kernel;

namespace ScNet.SteadyState;

/// <summary>The waveforms of every element at one operating point, each read off the solution of the independent part that the element is in.</summary>
internal sealed class PeriodicSignals : IPeriodicSignals
{
    private readonly Converter _converter;
    private readonly PreparedMode _prepared;
    private readonly Lazy<PeriodicSolution>[] _solutions;

    /// <summary>Prepares the waveforms; a part is solved when one of its elements is asked for.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="prepared">Its mode.</param>
    /// <param name="point">The operating point.</param>
    /// <param name="outputVoltage">The average output voltage in volts.</param>
    public PeriodicSignals(Converter converter, PreparedMode prepared, OperatingPoint point, double outputVoltage)
    {
        _converter = converter;
        _prepared = prepared;
        double period = 1 / point.FrequencyHz;
        double[] shares = prepared.Shares(period);
        Durations = Array.ConvertAll(prepared.Duties, d => d * period);
        _solutions = [.. shares.Select((share, p) => new Lazy<PeriodicSolution>(
            () => new PeriodicSolution(prepared.Converters[p].Network, prepared.Parts[p], point, outputVoltage, share)))];
    }

    /// <summary>The length of each phase in seconds.</summary>
    public double[] Durations { get; }

    /// <summary>The current through a switch from its first terminal in amperes; null where it does not conduct.</summary>
    public PhaseWaveform? SwitchCurrent(int phase, int index)
    {
        (int part, int own) = _prepared.Places.SwitchPlaces[index];
        return _prepared.Parts[part].Flows.Position(phase, own) is var position and >= 0
            ? _solutions[part].Value.ResistorCurrent(phase, position)
            : null;
    }

    /// <summary>The current into a capacitor's first terminal in amperes.</summary>
    public PhaseWaveform CapacitorCurrent(int phase, int index)
    {
        (int part, int own) = _prepared.Places.CapacitorPlaces[index];
        return _solutions[part].Value.CapacitorCurrent(phase, own, _converter.Capacitors[index].Farads);
    }

    /// <summary>The voltage of a capacitance, behind its series resistance, in volts.</summary>
    public PhaseWaveform CapacitorVoltage(int phase, int index)
    {
        (int part, int own) = _prepared.Places.CapacitorPlaces[index];
        return _solutions[part].Value.CapacitorVoltage(phase, own);
    }

    /// <summary>A converter of independent parts has no inductors.</summary>
    public PhaseWaveform InductorCurrent(int phase, int index) => throw new InvalidOperationException("There are no inductors.");

    /// <summary>A parasitic capacitance in farads, by its position in <see cref="Converter.ParasiticBranches"/>.</summary>
    public double ParasiticFarads(int index) => _prepared.Converters[0].Capacitors[_converter.Capacitors.Count + index].Farads;

    /// <summary>The current into its first terminal in amperes; a converter with parasitic capacitances is a single part.</summary>
    public PhaseWaveform ParasiticCurrent(int phase, int index) =>
        _solutions[0].Value.CapacitorCurrent(phase, _converter.Capacitors.Count + index, ParasiticFarads(index));

    /// <summary>Its voltage in volts.</summary>
    public PhaseWaveform ParasiticVoltage(int phase, int index) => _solutions[0].Value.CapacitorVoltage(phase, _converter.Capacitors.Count + index);

    /// <summary>The voltage across a switch, first minus second terminal, where it is determined, in volts.</summary>
    public PhaseWaveform SwitchVoltage(int phase, int index)
    {
        (int part, int own) = _prepared.Places.SwitchPlaces[index];
        SwitchedNetwork network = _prepared.Converters[part].Network;
        return _solutions[part].Value.Difference(phase, network.SwitchFirst[own], network.SwitchSecond[own]);
    }

    /// <summary>The current out of the input source in amperes: what flows into everything on its node.</summary>
    public PhaseWaveform InputCurrent(int phase) => ModalWaveform.Sum(Durations[phase], _solutions.SelectMany((solution, part) =>
    {
        Converter own = _prepared.Converters[part];
        SwitchedNetwork network = own.Network;
        return Enumerable.Range(0, own.Capacitors.Count)
            .Select(c => (network.BranchFirst[c], network.BranchSecond[c], Current: (Func<ModalWaveform?>)(() => solution.Value.CapacitorCurrent(phase, c, own.Capacitors[c].Farads))))
            .Concat(Enumerable.Range(0, own.Switches.Count)
                .Select(s => (network.SwitchFirst[s], network.SwitchSecond[s], Current: (Func<ModalWaveform?>)(() => _prepared.Parts[part].Flows.Position(phase, s) is var at and >= 0 ? solution.Value.ResistorCurrent(phase, at) : null))))
            .Where(e => (e.Item1 == network.Input) != (e.Item2 == network.Input))
            .Select(e => (e.Item1 == network.Input ? 1.0 : -1.0, e.Current()))
            .Where(e => e.Item2 is not null)
            .Select(e => (e.Item1, e.Item2!));
    }));

    /// <summary>The potential of a node against the reference, where it is determined, in volts.</summary>
    public PhaseWaveform Potential(int phase, string node)
    {
        int part = _prepared.Places.PartOf(node);
        return _solutions[part].Value.Difference(phase, _prepared.Converters[part].Nodes.PositionOf(node), NetworkGraph.Reference);
    }
}
