namespace ScNet.Tests.Documentation;

/// <summary>Tests that redirect the console: no other test runs at the same time.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class ConsoleGroup
{
    public const string Name = "Console";
}
