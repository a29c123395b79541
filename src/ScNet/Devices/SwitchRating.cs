using ScNet.Stress;

namespace ScNet.Devices;

/// <summary>One switch against the rating of its device.</summary>
public sealed class SwitchRating
{
    internal SwitchRating(Switch @switch, SwitchDevice device, IReadOnlyList<RatingVerdict> modes, RatingVerdict? atChanges, RatingVerdict overall, StackedSwitch stack)
    {
        Switch = @switch;
        Device = device;
        Modes = modes;
        AtChanges = atChanges;
        Overall = overall;
        Stack = stack;
    }

    /// <summary>The switch.</summary>
    public Switch Switch { get; }

    /// <summary>The sort of devices.</summary>
    public SwitchDevice Device { get; }

    /// <summary>The verdict in each mode; index as in <see cref="ConverterStress.Modes"/>.</summary>
    public IReadOnlyList<RatingVerdict> Modes { get; }

    /// <summary>The verdict on all changes of mode; null where the converter has fewer than two modes, or changes do not count.</summary>
    public RatingVerdict? AtChanges { get; }

    /// <summary>The verdict on everything that counts: the one of the largest stack.</summary>
    public RatingVerdict Overall { get; }

    /// <summary>The stack that the overall verdict takes, whether it is allowed or not, with the netlist's on-resistance.</summary>
    public StackedSwitch Stack { get; }

    /// <summary>The overall verdict.</summary>
    public override string ToString() => Overall.ToString();
}
