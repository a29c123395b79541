using Fractions;

namespace ScNet.Design.Requirements;

/// <summary>A candidate, or a range of them, that a requirement asks for: a file, or families.</summary>
public sealed record CandidateRequest
{
    private const int MostCells = 1000;

    /// <summary>The netlist file; null for a family.</summary>
    /// <exception cref="ArgumentException">It is empty, or there are families as well.</exception>
    public string? File { get; init => field = value is null ? null : Alone(Guard.Named(value, nameof(File)), value, Families); }

    /// <summary>The families whose gears are laid over each other, or the one family, such as "ladder"; empty for a file.</summary>
    /// <exception cref="ArgumentException">A name is empty, or there is a file as well.</exception>
    public IReadOnlyList<string> Families { get; init => field = Alone<IReadOnlyList<string>>([.. Guard.Copy(value, nameof(Families)).Select(f => Guard.Named(f, nameof(Families)))], File, value); } = [];

    /// <summary>The smallest and the largest size of the families; undetermined where they have none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The smallest is below 1, or the largest above 1000.</exception>
    public Interval<int> Sizes { get; init => field = Guard.AtLeastOne(value.Minimum ?? 1, nameof(Sizes)) > 0 && Guard.Count(value.Maximum ?? 1, 1, MostCells, nameof(Sizes)) > 0 ? value : default; }

    /// <summary>The ratios that count: of the families only the members of one of these ratios are asked for; empty for all of them.</summary>
    public IReadOnlyList<Fraction> Ratios { get; init => field = Guard.Copy(value, nameof(Ratios)); } = [];

    /// <summary>Whether all sizes of all families make one converter with a gear each instead of a candidate each.</summary>
    public bool AreGears { get; init; }

    /// <summary>Where a document asks for it, for findings about it; null where there is no document.</summary>
    internal SourcePosition? Position { get; init; }

    /// <summary>The file or the families.</summary>
    public override string ToString() => File ?? $"{string.Join(" + ", Families)}{(Sizes.IsDetermined ? $" {Sizes}" : string.Empty)}{(Ratios.Count > 0 ? $" of {string.Join(", ", Ratios)}" : string.Empty)}";

    /// <summary>Whether both ask for the same, wherever they stand.</summary>
    /// <param name="other">Another request.</param>
    public bool Equals(CandidateRequest? other) => other is not null && File == other.File && Sizes == other.Sizes && AreGears == other.AreGears
        && Families.SequenceEqual(other.Families, StringComparer.Ordinal) && Ratios.SequenceEqual(other.Ratios);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = default;
        hash.Add(File, StringComparer.Ordinal);
        hash.Add(Sizes);
        hash.Add(AreGears);
        foreach (string family in Families)
        {
            hash.Add(family, StringComparer.Ordinal);
        }

        foreach (Fraction ratio in Ratios)
        {
            hash.Add(ratio);
        }

        return hash.ToHashCode();
    }

    // whichever of the two is set last checks
    private static T Alone<T>(T set, string? file, IReadOnlyList<string>? families) => file is null || families is null or { Count: 0 }
        ? set
        : throw new ArgumentException("Expected a file or families, but got both.", nameof(families));
}
