using System.Globalization;
using ScNet.Analysis;

namespace ScNet.Results.Pages;

/// <summary>The analysis of a converter as a page: of each mode ratio, limits, charges and voltages, and the impedance at frequencies asked for.</summary>
public static class AnalysisPage
{
    private const double ExampleFrequencyHz = 1e6;

    /// <summary>The page of all modes.</summary>
    /// <param name="analysis">The analysis.</param>
    /// <param name="frequenciesHz">Frequencies in hertz (Hz) at which to give the exact impedance beside its estimates; none where left out.</param>
    public static Page Of(ConverterAnalysis analysis, params IReadOnlyList<double> frequenciesHz)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return Of(analysis.Converter, analysis.Modes, frequenciesHz);
    }

    /// <summary>The page of one mode.</summary>
    /// <param name="analysis">The analysis.</param>
    /// <param name="frequenciesHz">Frequencies in hertz (Hz) at which to give the exact impedance beside its estimates; none where left out.</param>
    public static Page Of(ModeAnalysis analysis, params IReadOnlyList<double> frequenciesHz)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return Of(analysis.Converter, [analysis.Outcome], frequenciesHz);
    }

    /// <summary>The page of some modes of a converter.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="modes">Analyses of some of its modes, with or without a result.</param>
    /// <param name="frequenciesHz">Frequencies in hertz (Hz) at which to give the exact impedance beside its estimates.</param>
    /// <param name="file">The file of the converter as the caller named it; null where there is none.</param>
    /// <returns>The page; complete where every mode has a result, also at the frequencies.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is not finite and positive.</exception>
    public static Page Of(Converter converter, IEnumerable<ModeOutcome> modes, IReadOnlyList<double> frequenciesHz, string? file = null)
    {
        ArgumentNullException.ThrowIfNull(converter);
        modes = Guard.Copy(modes, nameof(modes));
        ArgumentNullException.ThrowIfNull(frequenciesHz);
        List<PageBlock> blocks = [.. Introduction(converter)];
        bool isComplete = true;
        foreach (ModeOutcome mode in modes)
        {
            blocks.Add(new PageHeading($"Mode {mode.Mode.Name}"));
            if (mode.Analysis is { } analysis)
            {
                blocks.Add(Summary(analysis));
                blocks.AddRange(AnalysisTables.Of(analysis));
                blocks.AddRange(OutputBlocks.Of(analysis));
                isComplete &= ImpedanceBlocks.TryAdd(blocks, mode, frequenciesHz);
            }
            else
            {
                blocks.Add(new PageRemarks(["No result:"], isCaution: true));
                isComplete = false;
            }

            blocks.AddRange(Findings.Of(mode.Diagnostics.Except(converter.Warnings)));
        }

        return new Page(file is null ? converter.Name : $"{converter.Name} ({file})", blocks, isComplete);
    }

    private static IEnumerable<PageBlock> Introduction(Converter converter)
    {
        string[] counts =
        [
            Counts.Of(converter.Capacitors.Count, "capacitor", "capacitors"),
            .. converter.Inductors.Count > 0 ? [Counts.Of(converter.Inductors.Count, "inductor", "inductors")] : Array.Empty<string>(),
            Counts.Of(converter.Switches.Count, "switch", "switches"),
            Counts.Of(converter.Phases.Count, "phase", "phases"),
            Counts.Of(converter.Modes.Count, "mode", "modes"),
        ];
        yield return new PageRemarks([
            string.Join(", ", counts),
            $"Input node {converter.InputNode}, output node {converter.OutputNode} ({(converter.Load == LoadKind.Stiff ? "stiff" : "current")} load)",
            $"Phases: {string.Join(", ", converter.Phases.Select(Describe))}",
        ]);
        foreach (PageBlock finding in Findings.Of(converter.Warnings))
        {
            yield return finding;
        }
    }

    private static PageFigures Summary(ModeAnalysis mode)
    {
        List<PageFigure> figures = [new("Ideal ratio", $"{QuantityText.WithDecimal(mode.Ratio)} V/V", "ratio")];
        if (mode.Converter.Inductors.Count > 0)
        {
            figures.Add(new("Voltages fixed by", Balance(mode.Balance), "balance"));
        }

        if (!mode.CarriesLoad)
        {
            figures.Add(new("Charge and limits", "none: at constant inductor currents no charge balances while the output takes some"));
            return new PageFigures(figures);
        }

        if (mode.ChargeSharing is { } sharing)
        {
            bool isSoft = sharing.OhmsAtOneHertz == 0 && mode.Converter.Capacitors.Count > 0;
            figures.Add(new("Charge sharing", Falling(sharing.OhmsAtOneHertz) + (isSoft ? ": all capacitors are charged softly" : string.Empty), "chargeSharing.ohmsAtOneHertz"));
            figures.Add(new(
                "All in impulses", $"{Falling(mode.SlowSwitchingLimit.OhmsAtOneHertz)} (slow-switching limit without the steady share of held currents)", "slowSwitchingLimit.ohmsAtOneHertz"));
        }
        else
        {
            figures.Add(new("Slow-switching limit", Falling(mode.SlowSwitchingLimit.OhmsAtOneHertz), "slowSwitchingLimit.ohmsAtOneHertz"));
        }

        figures.Add(new("Fast-switching limit", EngineeringNumber.Of(mode.FastSwitchingLimit.Ohms, "Ω"), "fastSwitchingLimit.ohms"));
        figures.Add(new("Charges decided by", DecidedBy(mode.ChargeFlow), "chargeFlow.determinedBy"));
        figures.Add(new("Charge from input", Phases(mode.ChargeFlow.Input), "chargeFlow.input"));
        figures.Add(new("Charge to output", Phases(mode.ChargeFlow.Output), "chargeFlow.output"));
        return new PageFigures(figures);
    }

    private static string DecidedBy(ChargeFlow flow) => flow.DeterminedBy == FlowDetermination.ComponentValues ? "topology and component values"
        : flow.Switches.Concat([flow.Input, flow.Output]).All(charges => charges.All(q => q.IsExact)) ? "topology alone"
        : "topology alone for capacitors, by resistances too for switches and ports";

    // what fixed the last of the capacitor voltages
    private static string Balance(VoltageBalance balance) => balance switch
    {
        VoltageBalance.Averages => "averages: loops and volt-seconds",
        VoltageBalance.Ripple => "ripple of inductor currents, where averages leave them open",
        VoltageBalance.Losses => "losses, where averages and ripple leave them open",
        _ => "a controller, where nothing else does or against it",
    };

    private static string Falling(double ohmsAtOneHertz) => EngineeringNumber.Of(ohmsAtOneHertz, "Ω")
        + (ohmsAtOneHertz > 0 ? $" at 1 Hz, falling as 1/f: {EngineeringNumber.Of(ohmsAtOneHertz / ExampleFrequencyHz, "Ω")} at 1 MHz" : string.Empty);

    private static string Phases(PhaseValues values) => string.Join(", ", values.Select((value, j) => $"{value} in phase {j + 1}"));

    private static string Describe(Phase phase)
    {
        string number = phase.Number.ToString(CultureInfo.InvariantCulture);
        string name = phase.Name == number ? number : $"{number} {phase.Name}";
        return $"{name} (duty {Quantity.Exact(phase.Duty)})";
    }
}
