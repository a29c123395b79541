using System.Globalization;
using ScNet.Analysis;

namespace ScNet.Reporting.Html;

/// <summary>What a report of one converter says.</summary>
internal static class ConverterReport
{
    public static ReportContent Of(ConverterAnalysis analysis, ReportConditions conditions)
    {
        Converter converter = analysis.Converter;
        return new ReportContent(
            "Report of a converter",
            converter.Name,
            string.Join("; ", new[] { conditions.Origin, Parts(converter), conditions.Point?.ToString(), conditions.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) }.OfType<string>()),
            Glance(analysis),
            [
                new ReportSection("Before use", [new ProsePart(Cautions.Dangers, IsCaution: true)]),
                Closing.Assumptions([.. Cautions.OfModel, .. Cautions.OfStress]),
                Closing.Origins([.. Origins.OfTopology(converter.Inductors.Count > 0), .. Origins.OfImpedance(), .. Origins.OfStress()]),
            ]);
    }

    private static string Parts(Converter converter) => string.Join(", ", new[]
    {
        Count(converter.Capacitors.Count, "capacitor", "capacitors"), Count(converter.Inductors.Count, "inductor", "inductors"),
        Count(converter.Switches.Count, "switch", "switches"), Count(converter.Phases.Count, "phase", "phases"), Count(converter.Modes.Count, "mode", "modes"),
    }.OfType<string>());

    private static string? Count(int count, string one, string many) =>
        count == 0 ? null : string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    private static GlanceFigure[] Glance(ConverterAnalysis analysis)
    {
        ModeAnalysis[] modes = [.. analysis.Results];
        return modes.Length == 1
            ?
            [
                new("Ideal ratio", $"{modes[0].Ratio} V/V"),
                .. modes[0].CarriesLoad
                    ?
                    [
                        new(modes[0].ChargeSharing is null ? "Slow-switching limit" : "Charge sharing", EngineeringNumber.Of((modes[0].ChargeSharing?.OhmsAtOneHertz ?? modes[0].SlowSwitchingLimit.OhmsAtOneHertz) / 1e6, "Ω"), "at 1 MHz, falling as 1/f"),
                        new GlanceFigure("Fast-switching limit", EngineeringNumber.Of(modes[0].FastSwitchingLimit.Ohms, "Ω")),
                    ]
                    : Array.Empty<GlanceFigure>(),
            ]
            : [.. modes.Take(8).Select(m => new GlanceFigure($"Mode {m.Mode.Name}", $"{m.Ratio} V/V", m.CarriesLoad ? $"{EngineeringNumber.Of(m.FastSwitchingLimit.Ohms, "Ω")} at high frequency" : string.Empty))];
    }
}
