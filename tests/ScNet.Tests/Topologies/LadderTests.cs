namespace ScNet.Tests.Topologies;

public sealed class LadderTests : FamilyTests
{
    internal override FamilyFacts Facts(int size, double farads, double ohms) => LadderFacts.Of(size, farads, ohms);
}
