using ScNet.Stress;

namespace ScNet.Devices;

/// <summary>One capacitor against the rating of its device.</summary>
public sealed class CapacitorRating
{
    internal CapacitorRating(Capacitor capacitor, CapacitorDevice device, IReadOnlyList<RatingVerdict> modes, RatingVerdict overall, StackedCapacitor stack)
    {
        Capacitor = capacitor;
        Device = device;
        Modes = modes;
        Overall = overall;
        Stack = stack;
    }

    /// <summary>The capacitor.</summary>
    public Capacitor Capacitor { get; }

    /// <summary>The device that it is made of.</summary>
    public CapacitorDevice Device { get; }

    /// <summary>The verdict in each mode; index as in <see cref="ConverterStress.Modes"/>.</summary>
    public IReadOnlyList<RatingVerdict> Modes { get; }

    /// <summary>The verdict on all modes: the one of the largest stack.</summary>
    public RatingVerdict Overall { get; }

    /// <summary>The stack that the overall verdict takes, whether it is allowed or not, with the netlist's capacitance.</summary>
    public StackedCapacitor Stack { get; }

    /// <summary>The overall verdict.</summary>
    public override string ToString() => Overall.ToString();
}
