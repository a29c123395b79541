using ScNet.Devices;

namespace ScNet.Design.Losses;

/// <summary>What the core of an inductor loses: watts at 1 MHz and 1 A of ripple, times a power of each.</summary>
/// <param name="Element">The name of the inductor.</param>
/// <param name="Device">What it is.</param>
/// <param name="RipplePerVoltSecond">Its ripple peak to peak in amperes, per volt of input and second of the period.</param>
internal readonly record struct CoreTerm(string Element, InductorDevice Device, double RipplePerVoltSecond)
{
    private const double ReferenceHertz = 1e6;

    /// <summary>The loss in watts.</summary>
    public double At(double volts, double hertz) => Of(Device, hertz, RipplePerVoltSecond * volts / hertz);

    /// <summary>The loss in watts of an inductor at a frequency and a ripple peak to peak.</summary>
    public static double Of(InductorDevice device, double hertz, double rippleAmperes) =>
        device.CoreWatts * Math.Pow(hertz / ReferenceHertz, device.CoreFrequencyExponent) * Math.Pow(rippleAmperes, device.CoreRippleExponent);
}
