using System.Collections.Concurrent;

namespace ScNet.Synthesis.Tests;

/// <summary>
/// Requests that several tests have an answer of, solved once: the same request gives the same answer, as
/// <see cref="SmallestConverterTests.The_same_request_gives_the_same_converter_and_effort"/> holds. All have the limit of
/// effort of the catalogue, which only says when to give up.
/// </summary>
internal static class Solved
{
    private static readonly ConcurrentDictionary<string, Lazy<SynthesisResult>> s_results = new();

    public static SynthesisResult Of(SynthesisRequest asked)
    {
        SynthesisRequest request = asked with { LargestEffort = Catalogue.LargestEffort };
        return s_results.GetOrAdd(Key(request), _ => new Lazy<SynthesisResult>(() => SmallestConverter.Find(request))).Value;
    }

    private static string Key(SynthesisRequest request) =>
        $"{string.Join(" ", request.Ratios)} | {request with { Ratios = [] }}";
}
