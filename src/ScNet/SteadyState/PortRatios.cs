namespace ScNet.SteadyState;

/// <summary>What input and output see of each other besides the output impedance, averages over a period.</summary>
/// <param name="Voltage">Volts at the open output per volt of input.</param>
/// <param name="Current">Amperes from the input, held at zero volts, per ampere of load.</param>
/// <param name="InputSiemens">Amperes from the input per volt of it with the output open.</param>
internal readonly record struct PortRatios(double Voltage, double Current, double InputSiemens);
