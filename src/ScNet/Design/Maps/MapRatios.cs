using ScNet.Design.Regulation;

namespace ScNet.Design.Maps;

/// <summary>The ratios of the modes of a map, rising: what an ideal chain of them would reach.</summary>
internal sealed class MapRatios
{
    private readonly double[] _ratios;

    // a mode whose duty regulates has any ratio within what its duties give, and leaves nothing over
    private readonly bool _isContinuous;

    private MapRatios(double[] ratios, bool isContinuous) => (_ratios, _isContinuous) = (ratios, isContinuous);

    public static MapRatios Of(IReadOnlyList<RegulatedMode> modes) => new(
        [.. modes.Where(m => m.Ratio is not null).Select(m => Math.Abs(m.Ratio!.Value.ToDouble())).Order()],
        modes.Any(m => m.Ratio is null));

    /// <summary>The lowest ratio that is above one; null where none is.</summary>
    public double? Above(double ratio) => _ratios.Where(r => r > ratio).Select(r => (double?)r).FirstOrDefault();

    /// <summary>Output over input power of the lowest ratio that reaches the output, without any other loss; null where none does.</summary>
    public double? IdealEfficiency(double inputVolts, double outputVolts) => _isContinuous ? 1
        : _ratios.Where(r => r * inputVolts >= outputVolts).Select(r => (double?)(outputVolts / (r * inputVolts))).FirstOrDefault();
}
