namespace ScNet.Derivations;

/// <summary>A suspected slip in a closed form: one mistake that gives exactly the wrong expression that was stated.</summary>
/// <param name="Kind">Which slip.</param>
/// <param name="Description">The slip in words.</param>
public sealed record FormSlip(SlipKind Kind, string Description)
{
    /// <summary>The slip in words.</summary>
    public override string ToString() => Description;
}
