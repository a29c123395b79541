using ScNet.Analysis;
using ScNet.Devices;
using ScNet.Reporting.Charts;
using ScNet.Results;
using ScNet.Results.Pages;
using ScNet.Stress;

namespace ScNet.Reporting.Html;

/// <summary>What every element must withstand, and how that compares with its devices where they are known.</summary>
internal static class StressPart
{
    // every change between two modes is looked at: the square of them in time and room
    private const int MostModes = 32;

    public static IEnumerable<ReportSection> Of(ConverterAnalysis analysis, ReportConditions conditions)
    {
        if (!analysis.Results.Any() || analysis.Modes.Count > MostModes)
        {
            yield break;
        }

        ConverterStress stress = ConverterStress.Of(analysis, conditions.InputVolts ?? Input(conditions));
        ConverterRatings? ratings = Limits(conditions) is { } limits ? ConverterRatings.Of(stress, limits) : null;
        Page page = StressPage.Of(ratings is null ? RatedStress.Of(null, stress) : RatedStress.Of(null, ratings));
        yield return new ReportSection("Stress", [
            new PicturesPart([PicturePair.Of(a => ratings is null ? StressChart.Of(stress, a) : StressChart.Of(ratings, a))]),
            new PagePart(new Page("What each element withstands", page.Blocks)),
        ]);
    }

    private static Interval<double> Input(ReportConditions conditions)
    {
        double volts = conditions.Point?.InputVoltageVolts ?? 1;
        return new Interval<double>(volts, volts);
    }

    // the devices that each element is made of
    private static RatingLimits? Limits(ReportConditions conditions) => conditions.Limits ?? (conditions.Sized is { } sized && sized.Switches.Count > 0 && sized.Capacitors.Count > 0
        ? new RatingLimits
        {
            Switch = sized.Switches[0].Device,
            Capacitor = sized.Capacitors[0].Device,
            SwitchDevices = sized.Converter.Switches.Zip(sized.Switches).ToDictionary(p => p.First.Name, p => p.Second.Device),
            CapacitorDevices = sized.Converter.Capacitors.Zip(sized.Capacitors).ToDictionary(p => p.First.Name, p => p.Second.Device),
        }
        : null);
}
