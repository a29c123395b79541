using Fractions;

namespace ScNet.Graphs;

/// <summary>
/// A converter as plain integers: what every mode and phase of it shares, without names and without
/// component values. Node 0 is the reference.
/// </summary>
internal sealed class SwitchedNetwork
{
    public const int Reference = 0;

    public required int NodeCount { get; init; }

    public required int Input { get; init; }

    public required int Output { get; init; }

    public required LoadKind Load { get; init; }

    /// <summary>First and second node of each capacitor.</summary>
    public required int[] CapacitorFirst { get; init; }

    public required int[] CapacitorSecond { get; init; }

    /// <summary>First and second node of each switch.</summary>
    public required int[] SwitchFirst { get; init; }

    public required int[] SwitchSecond { get; init; }

    /// <summary>The duty of each phase.</summary>
    public required Fraction[] Duties { get; init; }

    /// <summary>Per mode: whether switch s is closed in phase j, at index j · SwitchCount + s.</summary>
    public required bool[][] Closed { get; init; }

    public int CapacitorCount => CapacitorFirst.Length;

    public int SwitchCount => SwitchFirst.Length;

    public int PhaseCount => Duties.Length;

    /// <summary>The switches closed in one phase of a mode, one flag per switch.</summary>
    public ReadOnlySpan<bool> ClosedIn(int mode, int phase) => Closed[mode].AsSpan(phase * SwitchCount, SwitchCount);
}
