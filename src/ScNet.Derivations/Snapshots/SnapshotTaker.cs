using ScNet.Analysis;

namespace ScNet.Derivations.Snapshots;

/// <summary>The values of an analysis as the entries of a snapshot, in the order of the analysis document.</summary>
/// <remarks>Cost: one entry per value; nothing is written as text.</remarks>
internal static class SnapshotTaker
{
    public static SnapshotMode Of(ModeOutcome outcome) => outcome.Analysis is { } analysis
        ? new SnapshotMode(
            outcome.Mode.Name,
            analysis.ChargeFlow.DeterminedBy == FlowDetermination.Topology ? "topology" : "componentValues",
            Entries(analysis))
        : new SnapshotMode(outcome.Mode.Name, null, []);

    private static List<SnapshotEntry> Entries(ModeAnalysis analysis)
    {
        Converter converter = analysis.Converter;
        int capacitors = converter.Capacitors.Count, switches = converter.Switches.Count, phases = converter.Phases.Count;
        List<SnapshotEntry> entries = new(3 + (phases * (2 + capacitors + (2 * switches))) + (3 * capacitors) + (2 * switches));
        Add(SnapshotQuantity.Ratio, null, analysis.Ratio);
        AddPhases(SnapshotQuantity.InputCharge, null, analysis.ChargeFlow.Input);
        AddPhases(SnapshotQuantity.OutputCharge, null, analysis.ChargeFlow.Output);
        for (int c = 0; c < capacitors; c++)
        {
            AddPhases(SnapshotQuantity.CapacitorCharge, converter.Capacitors[c].Name, analysis.ChargeFlow.Capacitors[c]);
        }

        for (int s = 0; s < switches; s++)
        {
            AddPhases(SnapshotQuantity.SwitchCharge, converter.Switches[s].Name, analysis.ChargeFlow.Switches[s]);
        }

        for (int c = 0; c < capacitors; c++)
        {
            Add(SnapshotQuantity.SlowCoefficient, converter.Capacitors[c].Name, analysis.SlowSwitchingLimit.Coefficients[c]);
        }

        Add(SnapshotQuantity.SlowSwitchingLimit, null, Number(analysis.SlowSwitchingLimit.OhmsAtOneHertz));
        for (int s = 0; s < switches; s++)
        {
            Add(SnapshotQuantity.FastCoefficient, converter.Switches[s].Name, analysis.FastSwitchingLimit.SwitchCoefficients[s]);
        }

        for (int c = 0; c < capacitors; c++)
        {
            if (converter.Capacitors[c].EsrOhms > 0)
            {
                Add(SnapshotQuantity.FastCoefficient, converter.Capacitors[c].Name, analysis.FastSwitchingLimit.CapacitorCoefficients[c]);
            }
        }

        for (int l = 0; l < converter.Inductors.Count; l++)
        {
            if (converter.Inductors[l].Ohms > 0)
            {
                Add(SnapshotQuantity.FastCoefficient, converter.Inductors[l].Name, analysis.FastSwitchingLimit.InductorCoefficients[l]);
            }
        }

        Add(SnapshotQuantity.FastSwitchingLimit, null, Number(analysis.FastSwitchingLimit.Ohms));
        for (int c = 0; c < capacitors; c++)
        {
            Add(SnapshotQuantity.CapacitorVoltage, converter.Capacitors[c].Name, analysis.IdealPoint.CapacitorVoltages[c]);
        }

        for (int s = 0; s < switches; s++)
        {
            AddPhases(SnapshotQuantity.BlockingVoltage, converter.Switches[s].Name, analysis.BlockingVoltages.Switches[s]);
            Add(SnapshotQuantity.PeakBlockingVoltage, converter.Switches[s].Name, analysis.BlockingVoltages.Peaks[s]);
        }

        return entries;

        void Add(SnapshotQuantity what, string? element, Quantity value) => entries.Add(new SnapshotEntry(new SnapshotKey(what, element), value));

        void AddPhases(SnapshotQuantity what, string? element, PhaseValues values)
        {
            for (int phase = 1; phase <= values.PhaseCount; phase++)
            {
                entries.Add(new SnapshotEntry(new SnapshotKey(what, element, phase), values[phase]));
            }
        }
    }

    // what exceeds the range of a double stands in no document
    private static Quantity Number(double ohms) => double.IsFinite(ohms) ? Quantity.Numeric(ohms) : Quantity.Undetermined;
}
