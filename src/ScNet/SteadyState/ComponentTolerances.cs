namespace ScNet.SteadyState;

/// <summary>How far component values may lie from their nominal ones, as fractions: 0.1 is ±10 %.</summary>
public sealed class ComponentTolerances
{
    /// <summary>Creates tolerances that hold for every element of a kind.</summary>
    /// <param name="capacitance">Fraction of each capacitance, from 0 to below 1.</param>
    /// <param name="onResistance">Fraction of each on-resistance, from 0 to below 1.</param>
    /// <param name="esr">Fraction of each series resistance, from 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A tolerance is negative, or one or more.</exception>
    public ComponentTolerances(double capacitance = 0, double onResistance = 0, double esr = 0)
    {
        Capacitance = Check(capacitance, nameof(capacitance));
        OnResistance = Check(onResistance, nameof(onResistance));
        Esr = Check(esr, nameof(esr));
    }

    /// <summary>Fraction of each capacitance.</summary>
    public double Capacitance { get; }

    /// <summary>Fraction of each on-resistance.</summary>
    public double OnResistance { get; }

    /// <summary>Fraction of each series resistance.</summary>
    public double Esr { get; }

    /// <summary>The tolerances in per cent.</summary>
    public override string ToString() =>
        $"capacitance ±{UnitText.Percent(Capacitance)}, on-resistance ±{UnitText.Percent(OnResistance)}, ESR ±{UnitText.Percent(Esr)}";

    /// <summary>The converter with every value moved by a fraction of its tolerance, from -1 to 1: capacitances, on-resistances, series resistances, in that order.</summary>
    internal Converter Apply(Converter nominal, ReadOnlySpan<double> deviations)
    {
        int capacitors = nominal.Capacitors.Count, switches = nominal.Switches.Count;
        double[] farads = new double[capacitors], ohms = new double[switches], esr = new double[capacitors];
        for (int i = 0; i < capacitors; i++)
        {
            farads[i] = nominal.Capacitors[i].Farads * (1 + (Capacitance * deviations[i]));
            esr[i] = nominal.Capacitors[i].EsrOhms * (1 + (Esr * deviations[capacitors + switches + i]));
        }

        for (int s = 0; s < switches; s++)
        {
            ohms[s] = nominal.Switches[s].Ohms * (1 + (OnResistance * deviations[capacitors + s]));
        }

        return nominal.WithValues(farads, ohms, esr);
    }

    /// <summary>The converter with every value of a kind moved by the same fraction of its tolerance, from -1 to 1.</summary>
    internal Converter Apply(Converter nominal, double capacitance, double onResistance, double esr)
    {
        int capacitors = nominal.Capacitors.Count;
        return Apply(nominal, [
            .. Enumerable.Repeat(capacitance, capacitors), .. Enumerable.Repeat(onResistance, nominal.Switches.Count),
            .. Enumerable.Repeat(esr, capacitors)]);
    }

    private static double Check(double tolerance, string name) => tolerance is >= 0 and < 1
        ? tolerance
        : throw new ArgumentOutOfRangeException(name, tolerance, "Expected a fraction from 0 to below 1, such as 0.1 for ±10 %.");
}
