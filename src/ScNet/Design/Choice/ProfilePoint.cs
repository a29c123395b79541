namespace ScNet.Design.Choice;

/// <summary>An operating point of a requirement with the share of the time that it has.</summary>
/// <param name="InputVolts">The input voltage in volts, without the drop in the source.</param>
/// <param name="OutputVolts">The output voltage in volts.</param>
/// <param name="LoadAmperes">The load current in amperes.</param>
/// <param name="Weight">The share of the charge and, within a slice, of the time; zero for what must be held only.</param>
/// <param name="Load">The position of the state of the load.</param>
/// <param name="Slice">The position of the part of the discharge; -1 for an end of the input range.</param>
internal readonly record struct ProfilePoint(double InputVolts, double OutputVolts, double LoadAmperes, double Weight, int Load, int Slice);
