namespace ScNet.Tests.Topologies;

public sealed class FibonacciTests : FamilyTests
{
    internal override FamilyFacts Facts(int size, double farads, double ohms) => FibonacciFacts.Of(size, farads, ohms);
}
