namespace ScNet.Devices;

/// <summary>Capacitance per area of a capacitor at a voltage across it, such as of a MOS capacitor.</summary>
/// <param name="Volts">Positive minus bottom plate in volts (V).</param>
/// <param name="FaradsPerSquareMetre">Small-signal capacitance per area there in farads per square metre (F/m²).</param>
public readonly record struct DensityPoint(double Volts, double FaradsPerSquareMetre);
