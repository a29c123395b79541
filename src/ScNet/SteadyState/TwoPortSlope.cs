namespace ScNet.SteadyState;

/// <summary>The derivatives of the four figures of a two-port by one value, each per unit of the value in SI units.</summary>
/// <param name="Ratio">Of the output voltage per volt of input without load.</param>
/// <param name="Ohms">Of the output impedance in ohms (Ω).</param>
/// <param name="CurrentRatio">Of the input current per unit of load current, the input held at zero volts.</param>
/// <param name="InputSiemens">Of the input current per volt without load in siemens (S).</param>
public readonly record struct TwoPortSlope(double Ratio, double Ohms, double CurrentRatio, double InputSiemens);
