using BenchmarkDotNet.Attributes;
using ScNet.Netlists;
using ScNet.Topologies;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace ScNet.Benchmarks;

/// <summary>Reading the document of a 1000-level ladder (3997 elements) against parsing its syntax alone.</summary>
public class Reading
{
    private readonly string _text = LadderDocument.Of(Ladder.StepDown(1000, farads: 1e-9, ohms: 2.5));

    /// <summary>Makes sure that the document has no error.</summary>
    [GlobalSetup]
    public void RequireSoundDocument() => CheckedConverter().GetConverter();

    /// <summary>The TOML library alone: a syntax tree with positions.</summary>
    [Benchmark(Baseline = true)]
    public DocumentSyntax SyntaxTree() => SyntaxParser.Parse(_text, "ladder.toml");

    /// <summary>The library: a checked converter.</summary>
    [Benchmark]
    public NetlistReading CheckedConverter() => NetlistReader.Read(_text, "ladder.toml");
}
