namespace ScNet.Search.Pairs;

/// <summary>Counts the pairs whose loops fix all voltages and charges, none of a capacitor zero.</summary>
internal sealed class PairCounter(PairCharges charges) : IPairVisitor
{
    public long Count { get; private set; }

    public void Visit(PairWalk walk, int place) => Count += charges.TryFind(walk, place) ? 1 : 0;
}
