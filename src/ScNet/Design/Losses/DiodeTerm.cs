namespace ScNet.Design.Losses;

/// <summary>A body diode that takes over a current at one edge of the period.</summary>
/// <param name="Element">The name of its switch.</param>
/// <param name="DiodeVolts">The forward voltage in volts, of all diodes in series.</param>
/// <param name="PerAmpere">Its current per ampere of load current.</param>
/// <param name="PerVoltSecond">Its current in amperes per volt of input and second of the period.</param>
/// <param name="BlockedPerVolt">What its switch blocks after the edge, per volt of input, where the current ends with it; zero where the switch closes on it.</param>
internal readonly record struct DiodeTerm(string Element, double DiodeVolts, double PerAmpere, double PerVoltSecond, double BlockedPerVolt = 0)
{
    /// <summary>The loss in watts. A current that ripple turns round takes the diode of the other switch, which drops as much.</summary>
    public double At(double volts, double amperes, double hertz, double deadSeconds) =>
        hertz * deadSeconds * DiodeVolts * Math.Abs((PerAmpere * amperes) + (PerVoltSecond * volts / hertz));
}
