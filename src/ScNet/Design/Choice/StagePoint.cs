namespace ScNet.Design.Choice;

/// <summary>A point that a stage with inductors serves at one of its duties.</summary>
/// <param name="Point">The operating point.</param>
/// <param name="Weight">What its loss counts, above zero.</param>
/// <param name="Node">The number of the duty, of <see cref="StageDuties"/>, whose ideal ratio is nearest to what gives the output.</param>
/// <param name="Costs">What the elements lose at this duty.</param>
internal sealed record StagePoint(ProfilePoint Point, double Weight, int Node, StageCosts Costs);
