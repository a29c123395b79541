using ScNet.Analysis;

namespace ScNet.Derivations.Checking;

/// <summary>What the analysis says about a subject.</summary>
internal sealed class Truth(ModeAnalysis analysis)
{
    /// <summary>Whether topology alone fixes every charge, so that every equation holds exactly.</summary>
    public bool HasExactFlow { get; } = analysis.Topology.Directions.Count == 0;

    public Quantity Of(Subject subject) => subject.Kind switch
    {
        StatementKind.Ratio => analysis.Ratio,
        StatementKind.InputCharge => analysis.ChargeFlow.Input[subject.Phase + 1],
        StatementKind.OutputCharge => analysis.ChargeFlow.Output[subject.Phase + 1],
        StatementKind.CapacitorCharge => analysis.ChargeFlow.Capacitors[subject.Element][subject.Phase + 1],
        StatementKind.SwitchCharge => analysis.ChargeFlow.Switches[subject.Element][subject.Phase + 1],
        StatementKind.CapacitorVoltage => analysis.IdealPoint.CapacitorVoltages[subject.Element],
        StatementKind.BlockingVoltage => analysis.BlockingVoltages.Switches[subject.Element][subject.Phase + 1],
        StatementKind.PeakBlockingVoltage => analysis.BlockingVoltages.Peaks[subject.Element],
        StatementKind.SlowCoefficient => analysis.SlowSwitchingLimit.Coefficients[subject.Element],
        _ when subject.IsCapacitor => analysis.FastSwitchingLimit.CapacitorCoefficients[subject.Element],
        _ => analysis.FastSwitchingLimit.SwitchCoefficients[subject.Element],
    };
}
