using System.Text.Json;

namespace ScNet.Mutants;

/// <summary>The tests that are asked about a room: by how their full names begin, less those of classes that are too slow.</summary>
/// <param name="Tests">Beginnings of names, without "ScNet.Tests.".</param>
/// <param name="Without">Beginnings of names that are left out all the same.</param>
/// <param name="Seconds">Seconds of the processor, by what the tests take on the unchanged library, after which a mutant that passes them counts as unnoticed.</param>
internal sealed record RoomTests(string[] Tests, string[] Without, double? Seconds = null)
{
    private const string Root = "ScNet.Tests.";

    private static readonly JsonSerializerOptions s_options = new() { PropertyNameCaseInsensitive = true };

    public static RoomTests Read(string path, string room) =>
        JsonSerializer.Deserialize<Dictionary<string, RoomTests>>(File.ReadAllText(path), s_options)!.TryGetValue(room, out RoomTests? tests)
            ? tests
            : throw new InvalidDataException($"'{path}' names no tests for the room '{room}'.");

    public bool Has(string name) => Tests.Any(t => name.StartsWith(Root + t, StringComparison.Ordinal)) && !Without.Any(t => name.StartsWith(Root + t, StringComparison.Ordinal));
}
