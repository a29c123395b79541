namespace ScNet.SteadyState.Exponential;

/// <summary>The diagnostics of networks without a periodic state.</summary>
internal static class FaultReport
{
    /// <summary>Why a further output carries no current.</summary>
    public static Diagnostic OfOutput(Converter converter, int output, NetworkFault fault, int phase)
    {
        FurtherOutput own = converter.FurtherOutputs[output];
        string reason = fault == NetworkFault.LoadWithoutSupply
            ? "no steady current can reach it: over a period it would charge a capacitor in one direction only"
            : $"its current has no path{(phase < 0 ? string.Empty : $" in phase {phase + 1}")}";
        return new Diagnostic(
            DiagnosticSeverity.Warning,
            fault == NetworkFault.LoadWithoutSupply ? DiagnosticCodes.CapacitorUnbalanced : DiagnosticCodes.LoadInterrupted,
            $"The further output {Quoted.Name(own.Name)} is left out of the periodic solution: {reason}. Put a capacitor across it that the network charges.",
            [own.Name],
            phase < 0 ? null : phase + 1);
    }

    /// <summary>Throws where there is a fault.</summary>
    /// <exception cref="ScNetException">There is.</exception>
    public static void Require(Converter converter, Mode mode, NetworkFault fault, int phase)
    {
        if (fault == NetworkFault.None)
        {
            return;
        }

        string where = phase < 0 ? "" : $" in phase {phase + 1}";
        string message = fault switch
        {
            NetworkFault.InductorWithoutPath => $"The current of an inductor has no path{where}. Close a switch that gives it one, or state the capacitance that takes it.",
            NetworkFault.LoadWithoutPath => $"The load's current has no path{where}. Put a capacitor across the output.",
            NetworkFault.LoadWithoutSupply => "No steady current can reach the load: over a period it would charge a capacitor in one direction only.",
            NetworkFault.InductorAcrossSources => "An inductor without winding resistance lies across sources in every phase, so its current grows without end. State its resistance in ohms.",
            NetworkFault.NoOutputCurrent => "No average current passes between the stiff output and the network, so the output voltage is not determined.",
            _ => "A disturbance returns unchanged after every period, as in a resonance without resistance that is in step with the switching. State the resistances of the inductors, or choose another frequency.",
        };
        throw new ScNetException($"Mode '{mode.Name}' of '{converter.Name}' has no periodic state:", [new Diagnostic(
            DiagnosticSeverity.Error,
            DiagnosticCodes.NoPeriodicState,
            message,
            [.. fault is NetworkFault.InductorWithoutPath or NetworkFault.InductorAcrossSources ? converter.Inductors.Select(l => l.Name) : []],
            phase < 0 ? null : phase + 1)]);
    }
}
