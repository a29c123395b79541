namespace ScNet.SteadyState.Conduction;

/// <summary>The diagnostics of operating points that do not exist.</summary>
internal static class ConductionFault
{
    /// <summary>No time at which the currents end.</summary>
    public static ScNetException NoTime(Converter converter, Mode mode, int[] events) => Of(
        converter,
        mode,
        events.Length == 0
            ? "The operating point has no periodic state."
            : $"No length of phase {string.Join(", ", events.Select(j => j + 1))} brings the inductor's current to zero at its end with this load. Without load there is no such operating point; state a load that takes energy from the output.",
        events.Length == 1 ? events[0] : null);

    /// <summary>No choice of diodes that agrees with the currents.</summary>
    public static ScNetException Diodes(Converter converter, Mode mode, int phase, bool hasCandidates) => Of(
        converter,
        mode,
        hasCandidates
            ? $"In phase {phase + 1} no choice of conducting body diodes agrees with the inductor's current and the forward voltages."
            : $"Phase {phase + 1} leaves an inductor with a current no path, or drives an open switch's body diode beyond its forward voltage. State 'diode_volts' of the switches that take the current, close a switch, or leave capacitances across the diodes out.",
        phase);

    /// <summary>A voltage that no frequency gives.</summary>
    public static ScNetException NoFrequency(Converter converter, Mode mode, double outputVolts) => Of(
        converter, mode, $"No switching frequency gives an output voltage of {UnitText.Of(outputVolts, "V")} with these on-times and this load.", null);

    private static ScNetException Of(Converter converter, Mode mode, string message, int? phase) => new(
        $"Mode '{mode.Name}' of '{converter.Name}' has no such operating point:",
        [new Diagnostic(DiagnosticSeverity.Error, DiagnosticCodes.NoPeriodicState, message, [.. converter.Inductors.Select(l => l.Name)], phase + 1)]);
}
