namespace ScNet.Numerics;

/// <summary>A sparse problem whose unknowns nearly all meet one another: solving it would take more steps than are allowed.</summary>
internal sealed class FillLimitException(int unknowns)
    : Exception($"{unknowns} unknowns fill a triangle of more than {FillOrder.MostSteps} steps.")
{
    public int Unknowns { get; } = unknowns;
}
