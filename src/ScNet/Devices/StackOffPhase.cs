using System.Collections.Immutable;
using Fractions;
using ScNet.Stress;

namespace ScNet.Devices;

/// <summary>What the gates of a stack need in one phase in which it is open.</summary>
/// <remarks>
/// The source side is the lower end of an n-type stack and the upper end of a p-type one. Off, each gate is held at its own source,
/// and the devices share the blocked voltage equally: <see cref="StackGateLevels"/>.
/// </remarks>
public sealed class StackOffPhase
{
    private StackOffPhase(Mode mode, int phase, ImmutableArray<Interval<double>> gateVolts)
    {
        Mode = mode;
        Phase = phase;
        GateVolts = gateVolts;
    }

    /// <summary>The mode.</summary>
    public Mode Mode { get; }

    /// <summary>The phase number, from 1.</summary>
    public int Phase { get; }

    /// <summary>
    /// The level of each gate against the reference in volts (V) over the input range, the device at the source side first;
    /// undetermined where an end of the switch floats.
    /// </summary>
    public IReadOnlyList<Interval<double>> GateVolts { get; }

    /// <summary>The place and the levels.</summary>
    public override string ToString() => $"mode {Mode}, phase {Phase}: off {string.Join(", ", GateVolts.Select(v => v.ToString("V")))}";

    /// <summary>The levels of a stack between two nodes.</summary>
    /// <param name="mode">The stress in the mode.</param>
    /// <param name="phase">The phase number, from 1.</param>
    /// <param name="stack">The stack.</param>
    /// <param name="first">The first node of the switch.</param>
    /// <param name="second">The second node.</param>
    internal static StackOffPhase Of(ModeStress mode, int phase, StackedSwitch stack, int first, int second)
    {
        Interval<Fraction> a = mode.NodePotentials[first][phase].PerVoltOfInput, b = mode.NodePotentials[second][phase].PerVoltOfInput;
        if (!a.IsPoint || !b.IsPoint)
        {
            return new StackOffPhase(mode.Mode, phase, [.. Enumerable.Repeat(default(Interval<double>), stack.Count)]);
        }

        (Fraction low, Fraction high) = a.Minimum!.Value < b.Minimum!.Value ? (a.Minimum!.Value, b.Minimum!.Value) : (b.Minimum!.Value, a.Minimum!.Value);
        Fraction source = stack.Device.Polarity == DevicePolarity.NType ? low : high;
        StackGateLevels[] ends = [.. new[] { mode.InputVolts.Minimum!.Value, mode.InputVolts.Maximum!.Value }.Select(volts =>
            StackGateLevels.Of(stack.Device, stack.Count, source.ToDouble() * volts, (high - low).ToDouble() * volts))];
        return new StackOffPhase(mode.Mode, phase, [.. ends[0].OffVolts.Zip(ends[1].OffVolts, (x, y) => new Interval<double>(Math.Min(x, y), Math.Max(x, y)))]);
    }
}
