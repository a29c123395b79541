using Fractions;

namespace ScNet.Stress;

/// <summary>
/// A closed switch, or a capacitor with series resistance: first minus second terminal is
/// <paramref name="Voltage"/> where no current flows.
/// </summary>
/// <param name="First">The first node.</param>
/// <param name="Second">The second node.</param>
/// <param name="Voltage">0 for a switch, the held voltage for a capacitor.</param>
/// <param name="Element">The index of the switch or of the capacitor.</param>
/// <param name="IsSwitch">Which of the two it is.</param>
internal readonly record struct ResistiveEdge(int First, int Second, Fraction Voltage, int Element, bool IsSwitch);
