namespace ScNet.Tests.Topologies;

public sealed class SeriesParallelTests : FamilyTests
{
    internal override FamilyFacts Facts(int size, double farads, double ohms) => SeriesParallelFacts.Of(size, farads, ohms);
}
