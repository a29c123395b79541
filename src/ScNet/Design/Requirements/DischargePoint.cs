namespace ScNet.Design.Requirements;

/// <summary>A point of a discharge curve.</summary>
/// <param name="StateOfCharge">The share of the charge that is left, 1 for full, 0 for empty.</param>
/// <param name="Volts">The voltage in volts (V) there, without load.</param>
public readonly record struct DischargePoint(double StateOfCharge, double Volts);
