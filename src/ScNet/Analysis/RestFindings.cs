using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>What the averages leave open where inductor currents end phases.</summary>
internal static class RestFindings
{
    /// <summary>A warning that some inductors rest for a part of the period, and one per inductor and phase whose end would interrupt it.</summary>
    public static IEnumerable<Diagnostic> Of(Converter converter, Mode mode, PhaseForest[] forests)
    {
        string[] names = [.. converter.Inductors.Where((_, l) => mode.UntilZeroPhases[l].Count > 0).Select(l => l.Name)];
        return names.Length == 0 ? [] : [Resting(names), .. Interrupted(converter, mode, forests)];
    }

    private static Diagnostic Resting(string[] names) => new(
        DiagnosticSeverity.Warning,
        DiagnosticCodes.DiscontinuousConduction,
        $"The current of {(names.Length == 1 ? "inductor" : "inductors")} {Quoted.List(names)} ends phases, so that ratio and charges depend on the load. Averages are those of the boundary, where such a phase lasts exactly its duty; ask for an operating point for others.",
        names);

    // every switch opens when the phase ends before its time; at the boundary it does not, so that averages see nothing of this
    private static IEnumerable<Diagnostic> Interrupted(Converter converter, Mode mode, PhaseForest[] forests)
    {
        SwitchedNetwork network = converter.Network;
        PhaseForest open = PhaseForest.Of(network, new bool[network.SwitchCount]);
        for (int l = 0; l < network.InductorCount; l++)
        {
            int first = network.BranchFirst[network.FirstInductorBranch + l], second = network.BranchSecond[network.FirstInductorBranch + l];
            for (int phase = 0; phase < forests.Length; phase++)
            {
                if (Ends(phase) && !mode.UntilZeroPhases[l].Contains(phase + 1) && forests[phase].AreConnected(first, second) && !open.AreConnected(first, second))
                {
                    yield return Interruption(converter, converter.Inductors[l].Name, phase);
                }
            }
        }

        bool Ends(int phase) => mode.UntilZeroPhases.Any(p => p.Contains(phase + 1));
    }

    private static Diagnostic Interruption(Converter converter, string inductor, int phase) => new(
        DiagnosticSeverity.Warning,
        DiagnosticCodes.InductorInterrupted,
        $"Where phase {LoopDescriptions.Label(converter, phase)} ends before its time every switch opens, which leaves the current of inductor {Quoted.Name(inductor)} no path, so that operating points exist only where it is zero then as well. Let a capacitor, or the body diodes of switches (diode_volts), carry it on.",
        [inductor],
        phase + 1);
}
