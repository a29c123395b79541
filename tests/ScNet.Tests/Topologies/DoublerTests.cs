namespace ScNet.Tests.Topologies;

public sealed class DoublerTests : FamilyTests
{
    internal override FamilyFacts Facts(int size, double farads, double ohms) => DoublerFacts.Of(size, farads, ohms);
}
