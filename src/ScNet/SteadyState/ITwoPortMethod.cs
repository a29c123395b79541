namespace ScNet.SteadyState;

/// <summary>A way to the two-port of a mode.</summary>
internal interface ITwoPortMethod
{
    /// <summary>The two-port at a frequency that has been checked.</summary>
    TwoPortPoint At(double frequencyHz);
}
