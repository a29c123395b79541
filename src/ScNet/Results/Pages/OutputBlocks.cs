using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Results.Pages;

/// <summary>The outputs of a mode, where there are several.</summary>
internal static class OutputBlocks
{
    private const double ExampleFrequencyHz = 1e6;

    /// <summary>Ratios and both limits; nothing where there is one output.</summary>
    public static IEnumerable<PageBlock> Of(ModeAnalysis mode)
    {
        if (mode.Converter.FurtherOutputs.Count == 0)
        {
            return [];
        }

        OutputMatrices outputs = mode.Outputs;
        string[] names = [.. outputs.Outputs.Select(o => o.Name)];
        PageTable table = new(
            "Outputs: ratio in V per V of input; fall of each per ampere drawn at each, slowly (charge sharing at 1 MHz, rising as 1/f below) and fast",
            [
                new("name", false), new("node", false), new("back at", false), new("ratio", true, "outputs.ratios"),
                .. names.Select(n => new PageColumn($"slow {n}", true, "outputs.chargeSharing", Group: "slow")),
                .. names.Select(n => new PageColumn($"fast {n}", true, "outputs.fastSwitchingLimit", Group: "fast")),
            ],
            names.Select((name, i) =>
            {
                FurtherOutput? further = i == 0 ? null : mode.Converter.FurtherOutputs[i - 1];
                Quantity ratio = outputs.Outputs[i].Ratio;
                return (IEnumerable<PageCell>)
                [
                    name,
                    further?.Node ?? mode.Converter.OutputNode,
                    further?.ReturnNode ?? Converter.ReferenceNode,
                    Cells.Of(ratio, QuantityText.WithDecimal(ratio)),
                    .. names.Select((_, k) => Cells.Of(outputs.ChargeSharing[i, k] / ExampleFrequencyHz, "Ω")),
                    .. names.Select((_, k) => Cells.Of(outputs.FastSwitchingLimit[i, k], "Ω")),
                ];
            }));
        return [table, .. Findings.Of(outputs.Diagnostics)];
    }

    /// <summary>The exact figures at some frequencies.</summary>
    public static IEnumerable<PageBlock> Of(MultiPort ports, IReadOnlyList<double> frequenciesHz)
    {
        string[] names = [.. ports.Converter.FurtherOutputs.Select(o => o.Name).Prepend(ports.Converter.OutputNode)];
        PageTable table = new(
            "Outputs, exact averages: ratio in V per V of input without load, fall of each per ampere drawn at each",
            [
                new("frequency", true, "hertz"), new("output", false), new("ratio", true, "outputs.ratios"), new("current ratio", true, "outputs.currentRatios"),
                .. names.Select(n => new PageColumn(n, true, "outputs.ohms", Group: "ohms")),
            ],
            frequenciesHz.Select(ports.At).SelectMany(point => names.Select((name, i) => (IEnumerable<PageCell>)
            [
                Cells.Of(point.FrequencyHz, "Hz"),
                name,
                Cells.Plain(point.Ratios[i]),
                Cells.Plain(point.CurrentRatios[i]),
                .. names.Select((_, k) => Cells.Of(point.Ohms[i, k], "Ω")),
            ])),
            nameColumns: 2);
        return [table, .. Findings.Of(ports.Diagnostics)];
    }
}
