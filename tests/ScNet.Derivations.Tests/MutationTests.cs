using Xunit.Abstractions;

namespace ScNet.Derivations.Tests;

public sealed class MutationTests(ITestOutputHelper output)
{
    private const int Wanted = 100;

    [Theory]
    [InlineData(20261125)]
    [InlineData(7)]
    [InlineData(1984)]
    public void Of_a_hundred_slips_in_right_derivations_all_are_caught_and_ninety_are_named(int seed)
    {
        Random random = new(seed);
        List<string> escaped = [], unnamed = [];
        Dictionary<string, int> made = [];
        for (int number = 0, done = 0; done < Wanted; number++)
        {
            string family = Restated.Families[random.Next(Restated.Families.Length)];
            Derivation right = Restated.Published(Restated.Facts(family, random.Next(2, 6)), random.Next(2) == 0);
            if (random.Next(2) == 0)
            {
                right = OfSomeElements(right, random);
            }

            if (Mutations.Of(number % Mutations.Count, random, right) is not { } mutation)
            {
                continue;
            }

            done++;
            made[mutation.Name] = made.GetValueOrDefault(mutation.Name) + 1;
            DerivationReport report = mutation.Derivation.Check();
            if (report.IsRight || !report.Wrong.Select(f => f.Statement).SequenceEqual(mutation.Changed))
            {
                escaped.Add($"{mutation.Name}: {report}");
            }
            else if (!report.Slips.Any(s => s.Kind == mutation.Kind && mutation.Changed.All(s.Explains.Contains)))
            {
                unnamed.Add($"{mutation.Name} ({mutation.Kind}): {report}");
            }
        }

        output.WriteLine($"seed {seed}: {Wanted - escaped.Count} caught, {Wanted - escaped.Count - unnamed.Count} named");
        output.WriteLine(string.Join('\n', made.Select(m => $"{m.Value,3} {m.Key}")));
        output.WriteLine(string.Join("\n\n", unnamed));
        Assert.True(escaped.Count == 0, $"seed {seed}, {escaped.Count} escaped: {string.Join("\n\n", escaped)}");
        Assert.True(Wanted - unnamed.Count >= 90, $"seed {seed}, {unnamed.Count} not named: {string.Join("\n\n", unnamed)}");
        Assert.Equal(Mutations.Count, made.Count);
    }

    // As a person does who works out a part of a converter: always one capacitor and one switch.
    private static Derivation OfSomeElements(Derivation derivation, Random random)
    {
        HashSet<string> left =
        [
            .. derivation.Converter.Capacitors.Skip(1).Select(c => c.Name).Concat(derivation.Converter.Switches.Skip(1).Select(s => s.Name))
                .Where(_ => random.Next(3) == 0),
        ];
        return Restated.With(derivation, s => s.Element is not null && left.Contains(s.Element) ? (StatedValue?)null : s.Value);
    }
}
