using ScNet.Analysis;
using ScNet.Devices;

namespace ScNet.Design.Choice;

/// <summary>What flows through inductors and capacitors of a stage.</summary>
internal static class StageCurrents
{
    /// <summary>The average current of an inductor per ampere of load, and half of its largest rise or fall within a phase in amperes, per volt of input and period in seconds.</summary>
    public static (double Average, double Rise) Of(ModeAnalysis analysis, int inductor, InductorDevice device) => (
        analysis.Inductors[inductor].Current is { IsDetermined: true } current ? Math.Abs(current.ToDouble()) : 1,
        analysis.Converter.Phases.Max(phase => analysis.Inductors[inductor].Voltage[phase.Number] is { IsDetermined: true } volts
            ? Math.Abs(volts.ToDouble()) * phase.Duty.ToDouble() / (2 * device.Henries) : 0));

    /// <summary>The charge that a capacitor takes and gives in a period, per unit of the load's charge.</summary>
    public static double ChargeOf(ModeAnalysis analysis, int capacitor) =>
        analysis.ChargeFlow.Capacitors[capacitor].Where(q => q.IsDetermined).Sum(q => Math.Max(0, q.ToDouble()));
}
