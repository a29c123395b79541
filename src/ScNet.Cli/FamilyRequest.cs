using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using ScNet.Topologies;

namespace ScNet.Cli;

/// <summary>A family that was asked for: its form, its numbers and its direction.</summary>
/// <param name="Family">The form.</param>
/// <param name="Numbers">One number per parameter of the form.</param>
/// <param name="IsStepUp">Whether the converter runs the other way.</param>
internal sealed record FamilyRequest(Family Family, int[] Numbers, bool IsStepUp)
{
    /// <summary>The word that asks for the other direction.</summary>
    public const string StepUp = "--step-up";

    /// <summary>Reads a family from its words, such as "ladder", "4" and, where wanted, "--step-up".</summary>
    /// <param name="words">The name, the numbers and perhaps <see cref="StepUp"/>.</param>
    /// <param name="request">The family, or null where the words are wrong.</param>
    /// <returns>What is wrong, or null.</returns>
    public static string? Read(IReadOnlyList<string> words, out FamilyRequest? request)
    {
        request = null;
        string[] plain = [.. words.Where(w => w != StepUp)];
        string name = plain.Length > 0 ? plain[0] : string.Empty;
        IReadOnlyList<Family> forms = FamilyCatalogue.Named(name);
        if (forms.Count == 0)
        {
            return $"There is no family '{name}'. There are {string.Join(", ", FamilyCatalogue.All.Select(f => f.Name).Distinct())}.";
        }

        if (!TryRead(plain.AsSpan(1), out int[]? numbers) || forms.FirstOrDefault(f => f.Accepts(numbers)) is not { } form)
        {
            return $"Expected {string.Join(", or ", forms.Select(Expectation))}, but got '{string.Join(' ', plain)}'.";
        }

        request = new FamilyRequest(form, numbers, plain.Length < words.Count);
        return request.IsStepUp && form.StepUpRatio is null
            ? $"The family {form.Usage} has no {StepUp}. Its ratio is {form.Ratio}."
            : null;
    }

    /// <summary>Reads a family from one text with blanks between the words.</summary>
    public static string? Read(string text, out FamilyRequest? request) =>
        Read(text.Split(' ', StringSplitOptions.RemoveEmptyEntries), out request);

    /// <summary>The converter.</summary>
    public Converter Build(double farads = 1, double ohms = 1, double henries = 1, double windingOhms = 0) =>
        Family.Build(Numbers, new FamilyOptions(IsStepUp, farads, ohms, Henries: henries, WindingOhms: windingOhms));

    /// <summary>The words, with one blank between them.</summary>
    public override string ToString() => string.Join(' ', [
        Family.Name,
        .. Numbers.Select(s => s.ToString(CultureInfo.InvariantCulture)),
        .. IsStepUp ? [StepUp] : Array.Empty<string>(),
    ]);

    private static bool TryRead(ReadOnlySpan<string> words, [NotNullWhen(true)] out int[]? numbers)
    {
        numbers = new int[words.Length];
        for (int i = 0; i < words.Length; i++)
        {
            if (!int.TryParse(words[i], NumberStyles.None, CultureInfo.InvariantCulture, out numbers[i]))
            {
                numbers = null;
                return false;
            }
        }

        return true;
    }

    private static string Expectation(Family form) => $"'{form.Usage}' with whole numbers {form.Ranges}";
}
