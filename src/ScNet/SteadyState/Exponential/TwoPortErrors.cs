namespace ScNet.SteadyState.Exponential;

/// <summary>How far rounding can have moved the figures of a two-port, each in its own unit.</summary>
internal readonly record struct TwoPortErrors(double Ratio, double Ohms, double CurrentRatio, double InputSiemens)
{
    /// <summary>With a load current as input the figures are averages themselves.</summary>
    public static TwoPortErrors Of(PeriodError error, double frequencyHz) => new(
        error.Output[NetworkStructure.Input] * frequencyHz,
        error.Output[NetworkStructure.Load] * frequencyHz,
        error.InputCharge[NetworkStructure.Load] * frequencyHz,
        error.InputCharge[NetworkStructure.Input] * frequencyHz);

    /// <summary>With a stiff output they are quotients of the averages by that of the output current.</summary>
    public TwoPortErrors OfStiff(double ratio, double ohms, double currentRatio)
    {
        double size = Math.Abs(ohms);
        double ratioError = size * (Ratio + (Math.Abs(ratio) * Ohms)), currentError = size * (CurrentRatio + (Math.Abs(currentRatio) * Ohms));
        return new(
            ratioError,
            size * size * Ohms,
            currentError,
            InputSiemens + (((Math.Abs(ratio) * currentError) + (Math.Abs(currentRatio) * ratioError)) / size));
    }
}
