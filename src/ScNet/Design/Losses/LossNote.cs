namespace ScNet.Design.Losses;

/// <summary>What a budget cannot count of an element, or counts only by an assumption.</summary>
/// <param name="Kind">The kind of loss.</param>
/// <param name="Element">The name of the element; empty for the whole converter.</param>
/// <param name="IsCounted">Whether the loss counts, by the assumption that the reason names; if not, it does not count at all.</param>
/// <param name="Reason">Why, for people.</param>
public sealed record LossNote(LossKind Kind, string Element, bool IsCounted, string Reason)
{
    /// <summary>The name of the element; empty for the whole converter.</summary>
    public string Element { get; init => field = Guard.Given(value, nameof(Element)); } = Guard.Given(Element, nameof(Element));

    /// <summary>"Plates of fly: counted, with n as keeping its potential while it floats".</summary>
    public override string ToString() => $"{Kind}{(Element.Length > 0 ? " of " + Element : string.Empty)}: {(IsCounted ? "counted" : "not counted")}, {Reason}";
}
