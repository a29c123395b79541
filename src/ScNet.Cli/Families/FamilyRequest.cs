using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace ScNet.Cli.Families;

/// <summary>A family that was asked for: its form, its numbers and its direction.</summary>
/// <param name="Family">The form.</param>
/// <param name="Sizes">One number per size of the form.</param>
/// <param name="IsStepUp">Whether the converter runs the other way.</param>
internal sealed record FamilyRequest(Family Family, int[] Sizes, bool IsStepUp)
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
        Family[] forms = [.. Family.All.Where(f => f.Name == name)];
        if (forms.Length == 0)
        {
            return $"There is no family '{name}'. There are {string.Join(", ", Family.All.Select(f => f.Name).Distinct())}.";
        }

        if (forms.FirstOrDefault(f => f.Sizes.Length == plain.Length - 1) is not { } form || !TryRead(form, plain, out int[]? sizes))
        {
            return $"Expected {string.Join(", or ", forms.Select(Expectation))}, but got '{string.Join(' ', plain)}'.";
        }

        request = new FamilyRequest(form, sizes, plain.Length < words.Count);
        return request.IsStepUp && form.StepUpRatio is null
            ? $"The family {form.Usage} has no {StepUp}. Its ratio is {form.Ratio}."
            : null;
    }

    /// <summary>Reads a family from one text with blanks between the words.</summary>
    public static string? Read(string text, out FamilyRequest? request) =>
        Read(text.Split(' ', StringSplitOptions.RemoveEmptyEntries), out request);

    /// <summary>The converter.</summary>
    public Converter Build(double farads = 1, double ohms = 1) => Family.Build(Sizes, new FamilyValues(IsStepUp, farads, ohms));

    /// <summary>The words, with one blank between them.</summary>
    public override string ToString() => string.Join(' ', [
        Family.Name,
        .. Sizes.Select(s => s.ToString(CultureInfo.InvariantCulture)),
        .. IsStepUp ? [StepUp] : Array.Empty<string>(),
    ]);

    private static bool TryRead(Family form, string[] words, [NotNullWhen(true)] out int[]? sizes)
    {
        int[] read = new int[form.Sizes.Length];
        sizes = null;
        for (int i = 0; i < read.Length; i++)
        {
            FamilySize size = form.Sizes[i];
            if (!int.TryParse(words[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out read[i])
                || read[i] < size.Least || read[i] > size.Most)
            {
                return false;
            }
        }

        if (form.Condition?.Holds(read) == false)
        {
            return false;
        }

        sizes = read;
        return true;
    }

    private static string Expectation(Family form) => $"'{form.Usage}' with whole numbers {form.SizesText}";
}
