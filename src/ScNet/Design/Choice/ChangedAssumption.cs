namespace ScNet.Design.Choice;

/// <summary>From which factor on an input assumption the winner is another one.</summary>
/// <param name="Assumption">The assumption, in words.</param>
/// <param name="Factor">The factor on it, to some percent; null where no factor that was tried changes the winner.</param>
/// <param name="Winner">The candidate that wins then; null where none does what is required then, or no factor changes the winner.</param>
public sealed record ChangedAssumption(string Assumption, double? Factor, Candidate? Winner)
{
    /// <summary>Assumption, factor and winner.</summary>
    public override string ToString() => Factor is { } factor
        ? FormattableString.Invariant($"{Assumption} × {factor:G3}: {(Winner is null ? "no candidate does what is required" : $"{Winner} wins")}")
        : $"{Assumption}: the same winner";
}
