using ScNet.Devices;

namespace ScNet.Design.Sizing;

/// <summary>The area in square metres of an element of value v, capacitance in farads or conductance in siemens: linear · v + root · √v + constant.</summary>
internal readonly record struct AreaLaw(double Linear, double Root, double Constant)
{
    /// <summary>The area of a capacitor of some kind and stack.</summary>
    public static AreaLaw Of(CapacitorDevice device, int count) => Of(count, count / device.FaradsPerSquareMetre);

    /// <summary>The area of a switch of some kind and stack.</summary>
    public static AreaLaw Of(SwitchDevice device, int count) => Of(count, count * device.OnResistanceOhmMicrometres * device.AreaSquareMetresPerMicrometre);

    /// <summary>The area at a value.</summary>
    public double At(double value) => (Linear * value) + (Root * Math.Sqrt(value)) + Constant;

    private static AreaLaw Of(int count, double eachPerValue) => new(count * eachPerValue, 0, 0);
}
