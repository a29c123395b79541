namespace ScNet.Design.Sizing;

/// <summary>What a search found.</summary>
/// <param name="Points">The points that are reached.</param>
/// <param name="Options">The option of each element.</param>
/// <param name="Values">The capacitance or conductance of each element.</param>
/// <param name="FrequenciesHz">The frequency of each point.</param>
/// <param name="Modes">The modes of the task at these sizes.</param>
/// <param name="Watts">The weighted sum of the losses.</param>
/// <param name="Gap">By how much the logarithm of that may be lowered at most.</param>
/// <param name="Rounds">The convex programs solved.</param>
/// <param name="Steps">Newton steps in all.</param>
internal sealed record SizingSolution(
    SizingPoint[] Points, int[] Options, double[] Values, double[] FrequenciesHz, SizedMode[] Modes, double Watts, double Gap, int Rounds, int Steps);
