namespace ScNet.Design.Choice;

/// <summary>An operating point of a requirement with the share of the time that it has.</summary>
/// <param name="InputVolts">The input voltage in volts, without the drop in the source.</param>
/// <param name="OutputVolts">The output voltage in volts.</param>
/// <param name="LoadAmperes">The load current in amperes.</param>
/// <param name="Weight">What its loss counts.</param>
/// <param name="IsEnd">Whether it must be held at an end of the input range, which is a voltage at the converter itself.</param>
internal readonly record struct ProfilePoint(double InputVolts, double OutputVolts, double LoadAmperes, double Weight, bool IsEnd)
{
    /// <summary>The resistance of the source in ohms that counts.</summary>
    public double SourceOhms(Requirements.Requirement requirement) => IsEnd ? 0 : requirement.SourceOhms;
}
