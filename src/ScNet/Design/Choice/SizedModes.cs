using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Devices;

namespace ScNet.Design.Choice;

/// <summary>A candidate with sizes.</summary>
/// <param name="Converter">The converter with its devices, at one of its duties where these regulate.</param>
/// <param name="Modes">The modes that serve.</param>
/// <param name="RelativeGap">By how much of itself the loss may be lowered at most.</param>
/// <param name="At">The same modes at a corner of the process, by falling ratio, each made when it is asked for.</param>
internal sealed record SizedModes(
    SizedConverter Converter, IReadOnlyList<RegulatedMode> Modes, double? RelativeGap, Func<Corner, IReadOnlyList<Lazy<RegulatedMode>>> At);
