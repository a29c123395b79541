namespace ScNet.Design;

/// <summary>The areas and the frequency that converters on equal silicon share.</summary>
public sealed class SiliconTotals
{
    /// <summary>Creates the totals.</summary>
    /// <param name="capacitorAreaSquareMetres">The area of all capacitors in square metres (m²).</param>
    /// <param name="switchAreaSquareMetres">The area of all switches in square metres (m²).</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz), at which the slow-switching limit is given.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not positive, or not from 1e-60 to 1e60.</exception>
    public SiliconTotals(
        double capacitorAreaSquareMetres, double switchAreaSquareMetres, double frequencyHz = ComparisonConditions.DefaultFrequencyHz)
    {
        CapacitorAreaSquareMetres = Guard.InRange(capacitorAreaSquareMetres, allowZero: false, nameof(capacitorAreaSquareMetres));
        SwitchAreaSquareMetres = Guard.InRange(switchAreaSquareMetres, allowZero: false, nameof(switchAreaSquareMetres));
        FrequencyHz = Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));
    }

    /// <summary>The area of all capacitors in square metres (m²).</summary>
    public double CapacitorAreaSquareMetres { get; }

    /// <summary>The area of all switches in square metres (m²).</summary>
    public double SwitchAreaSquareMetres { get; }

    /// <summary>Switching frequency in hertz (Hz).</summary>
    public double FrequencyHz { get; }

    /// <summary>The areas and the frequency.</summary>
    public override string ToString() =>
        $"{UnitText.Of(CapacitorAreaSquareMetres, "m²")} of capacitors, {UnitText.Of(SwitchAreaSquareMetres, "m²")} of switches, {UnitText.Of(FrequencyHz, "Hz")}";
}
