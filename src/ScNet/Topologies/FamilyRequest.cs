using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace ScNet.Topologies;

/// <summary>A member of a family as it is written on the command line and in documents: its form, its numbers and its direction.</summary>
/// <param name="Family">The form.</param>
/// <param name="Numbers">One number per parameter of the form.</param>
/// <param name="IsStepUp">Whether the converter runs the other way.</param>
public sealed record FamilyRequest(Family Family, IReadOnlyList<int> Numbers, bool IsStepUp)
{
    /// <summary>The form.</summary>
    public Family Family { get; init => field = Guard.Given(value, nameof(Family)); } = Guard.Given(Family, nameof(Family));

    /// <summary>One number per parameter of the form; a list of its own, which nobody changes.</summary>
    public IReadOnlyList<int> Numbers { get; init => field = Guard.Copy(value, nameof(Numbers)); } = Guard.Copy(Numbers, nameof(Numbers));

    /// <summary>The word that asks for the other direction.</summary>
    public const string StepUp = "--step-up";

    /// <summary>Reads a family from its words, such as "ladder", "4" and, where wanted, "--step-up".</summary>
    /// <param name="words">The name, the numbers and perhaps <see cref="StepUp"/>.</param>
    /// <param name="request">The family, or null where the words are wrong.</param>
    /// <returns>What is wrong, or null.</returns>
    public static string? Read(IReadOnlyList<string> words, out FamilyRequest? request)
    {
        request = null;
        string[] plain = [.. Guard.Copy(words, nameof(words)).Where(w => w != StepUp)];
        string name = plain.Length > 0 ? plain[0] : string.Empty;
        IReadOnlyList<Family> forms = FamilyCatalogue.Named(name);
        if (forms.Count == 0)
        {
            return $"There is no family {Quoted.Name(name)}. There are {string.Join(", ", FamilyCatalogue.All.Select(f => f.Name).Distinct())}.";
        }

        if (!TryRead(plain.AsSpan(1), out int[]? numbers) || forms.FirstOrDefault(f => f.Accepts(numbers)) is not { } form)
        {
            return $"Expected {string.Join(", or ", forms.Select(Expectation))}, but got {Quoted.Name(string.Join(' ', plain))}.";
        }

        request = new FamilyRequest(form, [.. numbers], plain.Length < words.Count);
        return request.IsStepUp && form.StepUpRatio is null
            ? $"The family {form.Usage} has no {StepUp}. Its ratio is {form.Ratio}."
            : null;
    }

    /// <summary>Reads a family from one text with blanks between the words.</summary>
    /// <param name="text">The words, such as "ladder 4".</param>
    /// <param name="request">The family, or null where the text is wrong.</param>
    /// <returns>What is wrong, or null.</returns>
    public static string? Read(string text, out FamilyRequest? request)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Read(text.Split(' ', StringSplitOptions.RemoveEmptyEntries), out request);
    }

    /// <summary>The converter, with a stiff load.</summary>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="henries">Inductance of every inductor in henries (H).</param>
    /// <param name="windingOhms">Winding resistance of every inductor in ohms (Ω).</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
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
