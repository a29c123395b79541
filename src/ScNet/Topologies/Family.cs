using System.Globalization;

namespace ScNet.Topologies;

/// <summary>The values, the direction and the load with which a family is built.</summary>
/// <param name="IsStepUp">Whether the same network is run the other way, for the reciprocal ratio.</param>
/// <param name="Farads">Capacitance of every capacitor in farads (F).</param>
/// <param name="Ohms">On-resistance of every switch in ohms (Ω).</param>
/// <param name="Load">What is connected to the output; a current load adds the capacitor "out".</param>
/// <param name="Henries">Inductance of every inductor in henries (H).</param>
/// <param name="WindingOhms">Winding resistance of every inductor in ohms (Ω).</param>
public sealed record FamilyOptions(
    bool IsStepUp = false, double Farads = 1, double Ohms = 1, LoadKind Load = LoadKind.Stiff, double Henries = 1, double WindingOhms = 0);

/// <summary>One form of a standard family: its name, the numbers it takes and what they give. Immutable.</summary>
public sealed class Family
{
    private readonly FamilyCondition? _condition;
    private readonly Func<int[], FamilyOptions, Converter> _build;

    internal Family(
        string name,
        (string Name, int Minimum, int Maximum)[] parameters,
        (string Down, string? Up) ratio,
        string description,
        Func<int[], FamilyOptions, Converter> build,
        FamilyCondition? condition = null)
    {
        Name = name;
        Parameters = [.. parameters];
        Ratio = ratio.Down;
        StepUpRatio = ratio.Up;
        Description = description;
        _build = build;
        _condition = condition;
    }

    /// <summary>The name, which more than one form may have.</summary>
    public string Name { get; }

    /// <summary>
    /// The numbers that it takes, in their order: the letter under which ratio and ranges speak of each, the smallest
    /// value and the largest, which is bound by the other numbers alone where it is <see cref="int.MaxValue"/>.
    /// </summary>
    public IReadOnlyList<(string Name, int Minimum, int Maximum)> Parameters { get; }

    /// <summary>The ratio in terms of the numbers.</summary>
    public string Ratio { get; }

    /// <summary>The ratio of the converter run the other way, or null where there is none.</summary>
    public string? StepUpRatio { get; }

    /// <summary>What the numbers count.</summary>
    public string Description { get; }

    /// <summary>The name and the letters of the numbers: "binary N K".</summary>
    public string Usage => string.Join(' ', [Name, .. Parameters.Select(p => p.Name)]);

    /// <summary>The bounds of the numbers: "N from 1 to 30, K from 1, below 2^N".</summary>
    public string Ranges => string.Join(", ", [
        .. Parameters.Where(p => p.Maximum < int.MaxValue).Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Name} from {p.Minimum} to {p.Maximum}")),
        .. _condition is { } condition ? [condition.Text] : Array.Empty<string>(),
    ]);

    /// <summary>Whether the family has a member of these numbers.</summary>
    /// <param name="numbers">One number per parameter.</param>
    public bool Accepts(params IReadOnlyList<int> numbers)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        return numbers.Count == Parameters.Count
            && Parameters.Select((p, i) => numbers[i] >= p.Minimum && numbers[i] <= p.Maximum).All(holds => holds)
            && _condition?.Holds([.. numbers]) != false;
    }

    /// <summary>The converter of these numbers, of 1 F and 1 Ω, stepping down, with a stiff load.</summary>
    /// <inheritdoc cref="Build(IReadOnlyList{int}, FamilyOptions)"/>
    public Converter Build(params IReadOnlyList<int> numbers) => Build(numbers, new FamilyOptions());

    /// <summary>The converter of these numbers.</summary>
    /// <param name="numbers">One number per parameter.</param>
    /// <param name="options">Values, direction and load.</param>
    /// <exception cref="ArgumentException">The family has no member of these numbers, or does not run the other way.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public Converter Build(IReadOnlyList<int> numbers, FamilyOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (!Accepts(numbers))
        {
            throw new ArgumentException($"Expected '{Usage}' with whole numbers {Ranges}, but got {string.Join(' ', numbers)}.", nameof(numbers));
        }

        return !options.IsStepUp || StepUpRatio is not null
            ? _build([.. numbers], options)
            : throw new ArgumentException($"The family {Usage} does not step up. Its ratio is {Ratio}.", nameof(options));
    }

    /// <summary>Usage and ratio.</summary>
    public override string ToString() => $"{Usage}: {Ratio}";
}

/// <summary>What binds the numbers of a family to one another.</summary>
internal sealed record FamilyCondition(string Text, Func<int[], bool> Holds);
