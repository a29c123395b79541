using ScNet.Devices;

namespace ScNet.Design.Sizing;

/// <summary>The area in square metres of an element of value v, capacitance in farads or conductance in siemens: linear · v + root · √v + constant.</summary>
/// <remarks>n devices of the active area k a take n (√(k a) + s)²: docs/theory/devices.md, "Area that is taken".</remarks>
internal readonly record struct AreaLaw(double Linear, double Root, double Constant)
{
    /// <summary>The area of a capacitor of some kind and stack.</summary>
    public static AreaLaw Of(ElementOption<CapacitorDevice> option) =>
        Of(option.Count, option.Count / option.FaradsPerSquareMetre(), option.Device.StackAreaFactor, option.Device.GuardMetres);

    /// <summary>The area of a switch of some kind and stack.</summary>
    public static AreaLaw Of(ElementOption<SwitchDevice> option) => Of(
        option.Count,
        option.Count * option.Device.OnResistanceOhmMicrometres * option.Device.AreaSquareMetresPerMicrometre,
        option.Device.StackAreaFactor,
        option.Device.GuardMetres);

    /// <summary>The area at a value.</summary>
    public double At(double value) => (Linear * value) + (Root * Math.Sqrt(value)) + Constant;

    private static AreaLaw Of(int count, double eachPerValue, double stackFactor, double guardMetres)
    {
        double own = eachPerValue * (count > 1 ? stackFactor : 1);
        return new(count * own, 2 * count * guardMetres * Math.Sqrt(own), count * guardMetres * guardMetres);
    }
}
