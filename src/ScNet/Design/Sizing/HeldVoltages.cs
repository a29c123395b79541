using ScNet.Analysis;

namespace ScNet.Design.Sizing;

/// <summary>The voltages at which capacitors are held, for those whose density depends on them.</summary>
internal static class HeldVoltages
{
    /// <summary>The different voltages in volts of each capacitor, those that topology fixes; empty where it fixes none.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="runs">The modes and input voltages in volts at which it runs.</param>
    public static double[][] Of(Converter converter, IEnumerable<(ModeAnalysis Analysis, double InputVolts)> runs)
    {
        (ModeAnalysis Analysis, double InputVolts)[] all = [.. runs];
        return
        [
            .. converter.Capacitors.Select((_, c) => all
                .Select(run => (Volts: run.Analysis.IdealPoint.CapacitorVoltages[c], run.InputVolts))
                .Where(v => v.Volts.IsDetermined)
                .Select(v => v.Volts.ToDouble() * v.InputVolts).Distinct().ToArray()),
        ];
    }
}
