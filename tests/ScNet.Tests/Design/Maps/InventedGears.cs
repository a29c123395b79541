using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Devices;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Maps;

/// <summary>Modes of invented converters for maps.</summary>
internal static class InventedGears
{
    public static Interval<double> Hertz { get; } = new(1e5, 1e8);

    public static RegulatedMode Half { get; } = Of(SeriesParallel.StepDown(2, 2e-9, 3));

    public static RegulatedMode Third { get; } = Of(SeriesParallel.StepDown(3, 2e-9, 3));

    public static RegulatedMode Quarter { get; } = Of(SeriesParallel.StepDown(4, 2e-9, 3));

    public static RegulatedMode Linear { get; } = RegulatedModes.Linear(ControlOverhead.None);

    public static IReadOnlyList<RegulatedMode> All { get; } = [Half, Third, Quarter, Linear];

    /// <summary>A half of nothing but resistance and capacitance, at any frequency.</summary>
    public static RegulatedMode IdealHalf { get; } = Bare(SeriesParallel.StepDown(2, 1e-6, 1e-3));

    public static RegulatedMode Of(Converter converter) => RegulatedModes.OfFrequency(LossModel.Of(Sized.Of(converter), ModeAnalysis.Of(converter)), Hertz);

    public static RegulatedMode Bare(Converter converter) => RegulatedModes.OfFrequency(LossModel.Of(Sized.Bare(converter), ModeAnalysis.Of(converter)), new(1, 1e8));

    public static double[] Range(double from, double to, int count) => [.. Enumerable.Range(0, count).Select(k => from + ((to - from) * k / (count - 1)))];
}
