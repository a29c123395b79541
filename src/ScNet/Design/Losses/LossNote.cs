namespace ScNet.Design.Losses;

/// <summary>What a budget cannot count of an element, or counts only with a bound.</summary>
/// <param name="Kind">The kind of loss.</param>
/// <param name="Element">The name of the element; empty for the whole converter.</param>
/// <param name="IsBounded">Whether the loss counts with the most that can be; if not, it does not count at all.</param>
/// <param name="Reason">Why, for people.</param>
public sealed record LossNote(LossKind Kind, string Element, bool IsBounded, string Reason)
{
    /// <summary>"Plates of fly: not counted, as its plates float".</summary>
    public override string ToString() => $"{Kind}{(Element.Length > 0 ? " of " + Element : string.Empty)}: {(IsBounded ? "at most" : "not counted")}, {Reason}";
}
