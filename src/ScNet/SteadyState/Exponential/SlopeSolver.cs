using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>The two-port with its derivative by one parameter at a time, in doubled precision.</summary>
internal sealed class SlopeSolver(NetworkStructure structure, NetworkValues<DoubleDouble> values)
{
    private readonly NetworkValues<Dual<DoubleDouble>> _values = values.To(v => new Dual<DoubleDouble>(v, default));

    /// <summary>By the resistance of a resistor of the network.</summary>
    public TwoPortSlope ByOhms(int resistor, double frequencyHz) => Run(_values with { Ohms = Seeded(_values.Ohms, resistor) }, Period(frequencyHz));

    /// <summary>By the capacitance of a capacitor of the network.</summary>
    public TwoPortSlope ByFarads(int capacitor, double frequencyHz) => Run(_values with { Farads = Seeded(_values.Farads, capacitor) }, Period(frequencyHz));

    public TwoPortSlope ByHenries(int inductor, double frequencyHz) => Run(_values with { Henries = Seeded(_values.Henries, inductor) }, Period(frequencyHz));

    public TwoPortSlope ByWinding(int inductor, double frequencyHz) => Run(_values with { WindingOhms = Seeded(_values.WindingOhms, inductor) }, Period(frequencyHz));

    /// <summary>By the duty of a phase at constant period.</summary>
    public TwoPortSlope ByDuty(int phase, double frequencyHz) => Run(_values with { Duties = Seeded(_values.Duties, phase) }, Period(frequencyHz));

    public TwoPortSlope ByFrequency(double frequencyHz)
    {
        DoubleDouble one = DoubleDouble.Of(1), frequency = DoubleDouble.Of(frequencyHz);
        return Run(_values, new Dual<DoubleDouble>(one, default) / new Dual<DoubleDouble>(frequency, one));
    }

    private TwoPortSlope Run(NetworkValues<Dual<DoubleDouble>> seeded, Dual<DoubleDouble> period)
    {
        PeriodMap<Dual<DoubleDouble>> map = new(StateEquations<Dual<DoubleDouble>>.Of(structure, seeded));
        if (!map.TryRun(period))
        {
            throw new InvalidOperationException("The period has been solved before.");
        }

        TwoPortValues<Dual<DoubleDouble>> found = TwoPortValues<Dual<DoubleDouble>>.Of(map, period, structure.Network.IsStiff, 0, out _);
        return new(found.Ratio.Slope.Nearest, found.Ohms.Slope.Nearest, found.CurrentRatio.Slope.Nearest, found.InputSiemens.Slope.Nearest);
    }

    private static Dual<DoubleDouble> Period(double frequencyHz) => new(DoubleDouble.Of(1) / DoubleDouble.Of(frequencyHz), default);

    private static Dual<DoubleDouble>[] Seeded(Dual<DoubleDouble>[] values, int index)
    {
        Dual<DoubleDouble>[] seeded = [.. values];
        seeded[index] = new(seeded[index].Value, DoubleDouble.Of(1));
        return seeded;
    }
}
