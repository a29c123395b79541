namespace ScNet.SteadyState;

/// <summary>
/// The derivatives of the impedance of all independent parts together: those of each, times the square of the share of
/// the load's charge that flows through it.
/// </summary>
/// <remarks>Derivation: docs/theory/output-impedance.md, "Independent parts".</remarks>
internal sealed class SensitivitySolution
{
    private readonly PreparedMode _prepared;
    private readonly PartSensitivity?[] _parts;
    private readonly double[] _weights;

    public SensitivitySolution(PreparedMode prepared, double period)
    {
        _prepared = prepared;
        Period = period;
        Ohms = prepared.Ohms(period);
        double[] shares = prepared.Shares(period);
        _weights = Array.ConvertAll(shares, s => s * s);
        _parts = [.. shares.Select((s, p) => s == 0 ? null : new PartSensitivity(prepared.Converters[p], prepared.Parts[p], period))];
    }

    /// <summary>The period in seconds.</summary>
    public double Period { get; }

    public double Ohms { get; }

    /// <summary>The derivative by a switch's on-resistance.</summary>
    public double ByOnResistance(int index) => Of(_prepared.Places.SwitchPlaces[index], (part, own) => part.ByOnResistance(own));

    /// <summary>The derivative by a capacitor's series resistance: the product of its currents.</summary>
    public double ByEsr(int index) => Of(_prepared.Places.CapacitorPlaces[index], (part, own) => part.ByEsr(own));

    /// <summary>The derivative by a capacitance in ohms per farad.</summary>
    public double ByCapacitance(int index) => Of(_prepared.Places.CapacitorPlaces[index], (part, own) => part.ByCapacitance(own));

    /// <summary>The derivative by a parasitic capacitance in ohms per farad, numbered after the capacitors; a converter that has one is a single part.</summary>
    public double ByParasitic(int index) => Of((0, index), (part, own) => part.ByCapacitance(own));

    /// <summary>The derivative by the duty of a phase, all else and the period unchanged.</summary>
    public double ByDuty(int phase) => Sum(part => part.ByDuty(phase));

    /// <summary>The derivative by the period in ohms per second, duties unchanged.</summary>
    public double ByPeriod() => Sum(part => part.ByPeriod());

    private double Of((int Part, int Position) place, Func<PartSensitivity, int, double> derivative) =>
        _parts[place.Part] is { } part ? _weights[place.Part] * derivative(part, place.Position) : 0;

    private double Sum(Func<PartSensitivity, double> derivative) =>
        _parts.Select((part, p) => part is null ? 0 : _weights[p] * derivative(part)).Sum();
}
