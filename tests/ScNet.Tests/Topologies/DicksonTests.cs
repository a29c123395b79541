namespace ScNet.Tests.Topologies;

public sealed class DicksonTests : FamilyTests
{
    internal override FamilyFacts Facts(int size, double farads, double ohms) => DicksonFacts.Of(size, farads, ohms);
}
