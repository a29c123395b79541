using ScNet.SteadyState.Exponential;

namespace ScNet.SteadyState;

/// <summary>
/// The derivatives of the two-port by every component value, parasitic capacitances included, by duty and by frequency.
/// Of a network of resistors and capacitors they are analytic, from the solution and that of the network with its phases
/// in the opposite order; with inductors every step of the solution carries its derivative along. To rounding in either way.
/// </summary>
/// <remarks>
/// Derivation: docs/theory/parasitic-capacitances.md, "Sensitivities", and docs/theory/two-port.md. Cost: four times
/// <see cref="ImpedanceSensitivity"/>; with inductors a set-up and a period in doubled precision per parameter.
/// Where there is no parasitic capacitance the ratios and the input conductance do not change.
/// </remarks>
public sealed class TwoPortSensitivity
{
    private readonly Lazy<PerPhase<TwoPortSlope>> _byDuty;

    internal TwoPortSensitivity(PreparedMode prepared, Converter converter, double period, Func<PerPhase<TwoPortSlope>> byDutyOfLoad)
    {
        FrequencyHz = 1 / period;
        SensitivitySolution impedance = new(prepared, period);
        PartSensitivity? Of(bool reversedOfInput, bool ofInput) => converter.ParasiticBranches.Count == 0 ? null
            : new(prepared.Converters[0], prepared.Parts[0], period, reversedOfInput, ofInput);
        PartSensitivity? ratio = Of(false, true), currentRatio = Of(true, false), siemens = Of(true, true);

        TwoPortSlope Slope(double ohms, Func<PartSensitivity, double> derivative) => new(
            ratio is null ? 0 : -derivative(ratio),
            ohms,
            currentRatio is null ? 0 : -derivative(currentRatio),
            siemens is null ? 0 : -derivative(siemens));

        int capacitors = converter.Capacitors.Count, next = capacitors;
        TwoPortSlope Capacitance(int index) => Slope(
            index < capacitors ? impedance.ByCapacitance(index) : impedance.ByParasitic(index), part => part.ByCapacitance(index));
        ByCapacitance = new([.. Enumerable.Range(0, capacitors).Select(Capacitance)], converter.Capacitors.Names);
        ByEsr = new([.. Enumerable.Range(0, capacitors).Select(i => (TwoPortSlope?)Slope(impedance.ByEsr(i), part => part.ByEsr(i)))], converter.Capacitors.Names);
        ByOnResistance = new(
            [.. Enumerable.Range(0, converter.Switches.Count).Select(s => Slope(impedance.ByOnResistance(s), part => part.ByOnResistance(s)))], converter.Switches.Names);
        var bottom = new TwoPortSlope?[capacitors];
        var top = new TwoPortSlope?[capacitors];
        for (int i = 0; i < capacitors; i++)
        {
            bottom[i] = converter.Capacitors[i].Plates.BottomFarads > 0 ? Capacitance(next++) : null;
            top[i] = converter.Capacitors[i].Plates.TopFarads > 0 ? Capacitance(next++) : null;
        }

        ByBottomPlate = new(bottom, converter.Capacitors.Names);
        ByTopPlate = new(top, converter.Capacitors.Names);
        ByParasitic = new([.. converter.Parasitics.Select(_ => Capacitance(next++))], converter.Parasitics.Names);
        ByInductance = new([], converter.Inductors.Names);
        ByWindingResistance = new([], converter.Inductors.Names);
        _byDuty = new(() => converter.Load == LoadKind.Stiff
            ? new PerPhase<TwoPortSlope>([.. converter.Phases.Select((_, j) => Slope(impedance.ByDuty(j), part => part.ByDuty(j)))], converter.Phases.Names)
            : byDutyOfLoad());
        TwoPortSlope byPeriod = Slope(impedance.ByPeriod(), part => part.ByPeriod());
        double factor = -period * period;
        ByFrequency = new(factor * byPeriod.Ratio, factor * byPeriod.Ohms, factor * byPeriod.CurrentRatio, factor * byPeriod.InputSiemens);
    }

    internal TwoPortSensitivity(Converter converter, SlopeSolver solver, double frequencyHz)
    {
        FrequencyHz = frequencyHz;
        int capacitors = converter.Capacitors.Count, switches = converter.Switches.Count, resistor = switches, plate = capacitors;
        ByCapacitance = new([.. Enumerable.Range(0, capacitors).Select(i => solver.ByFarads(i, frequencyHz))], converter.Capacitors.Names);
        ByEsr = new([.. converter.Capacitors.Select(c => c.EsrOhms > 0 ? solver.ByOhms(resistor++, frequencyHz) : (TwoPortSlope?)null)], converter.Capacitors.Names);
        ByOnResistance = new([.. Enumerable.Range(0, switches).Select(s => solver.ByOhms(s, frequencyHz))], converter.Switches.Names);
        ByInductance = new([.. converter.Inductors.Select((_, k) => solver.ByHenries(k, frequencyHz))], converter.Inductors.Names);
        ByWindingResistance = new([.. converter.Inductors.Select((_, k) => solver.ByWinding(k, frequencyHz))], converter.Inductors.Names);
        var bottom = new TwoPortSlope?[capacitors];
        var top = new TwoPortSlope?[capacitors];
        for (int i = 0; i < capacitors; i++)
        {
            CapacitorPlates plates = converter.Capacitors[i].Plates;
            bottom[i] = plates.BottomFarads > 0 ? solver.ByFarads(plate++, frequencyHz) : null;
            top[i] = plates.TopFarads > 0 ? solver.ByFarads(plate++, frequencyHz) : null;
        }

        ByBottomPlate = new(bottom, converter.Capacitors.Names);
        ByTopPlate = new(top, converter.Capacitors.Names);
        ByParasitic = new([.. converter.Parasitics.Select(_ => solver.ByFarads(plate++, frequencyHz))], converter.Parasitics.Names);
        _byDuty = new(() => new([.. converter.Phases.Select((_, j) => solver.ByDuty(j, frequencyHz))], converter.Phases.Names));
        ByFrequency = solver.ByFrequency(frequencyHz);
    }

    /// <summary>Switching frequency in hertz (Hz).</summary>
    public double FrequencyHz { get; }

    /// <summary>Per farad (1/F) of each capacitance; by name or by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<TwoPortSlope> ByCapacitance { get; }

    /// <summary>Per ohm (1/Ω) of each capacitor's series resistance, also where that is zero; with inductors null there, as the network is another than one with a small resistance. By name or by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<TwoPortSlope?> ByEsr { get; }

    /// <summary>Per ohm (1/Ω) of each on-resistance; by name or by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<TwoPortSlope> ByOnResistance { get; }

    /// <summary>Per farad (1/F) of each capacitor's bottom plate to the body, null where there is none; as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<TwoPortSlope?> ByBottomPlate { get; }

    /// <summary>Per farad (1/F) of each capacitor's positive plate to the body, null where there is none; as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<TwoPortSlope?> ByTopPlate { get; }

    /// <summary>Per farad (1/F) of each other parasitic capacitance; by name or by position as in <see cref="Converter.Parasitics"/>.</summary>
    public NamedList<TwoPortSlope> ByParasitic { get; }

    /// <summary>
    /// Per unit of each phase's duty at constant period, the other duties unchanged; to shorten one phase for another, take
    /// the difference. Found when first asked for.
    /// </summary>
    public PerPhase<TwoPortSlope> ByDuty => _byDuty.Value;

    /// <summary>Per henry (1/H) of each inductance; by name or by position as in <see cref="Converter.Inductors"/>.</summary>
    public NamedList<TwoPortSlope> ByInductance { get; }

    /// <summary>Per ohm (1/Ω) of each winding resistance, also where that is zero; by name or by position as in <see cref="Converter.Inductors"/>.</summary>
    public NamedList<TwoPortSlope> ByWindingResistance { get; }

    /// <summary>Per hertz (1/Hz) of the switching frequency at constant duties.</summary>
    public TwoPortSlope ByFrequency { get; }

    /// <summary>The slopes by frequency, and by how many values there are others.</summary>
    public override string ToString() =>
        $"at {UnitText.Of(FrequencyHz, "Hz")}: {ByFrequency} by frequency, by {UnitText.Count(ByCapacitance.Count, "capacitance", "capacitances")} and {UnitText.Count(ByOnResistance.Count, "on-resistance", "on-resistances")}";
}
