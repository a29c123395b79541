using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace ScNet.Search.Shards;

/// <summary>
/// A part of the work of finding every network of a size: what is in it follows from these numbers alone, so that
/// any machine can make it, again too, and with the same file as outcome. Three phases are searched in seconds and in one part.
/// </summary>
public sealed record AtlasShard
{
    /// <summary>The most parts that the work is divided into.</summary>
    public const int MaximumCount = 100_000;

    /// <summary>Names a part.</summary>
    /// <param name="capacitors">The number of flying capacitors, from 1 to <see cref="Atlas.MaximumCapacitorCount"/>.</param>
    /// <param name="number">The part, from 1.</param>
    /// <param name="count">The number of parts, to <see cref="MaximumCount"/>.</param>
    /// <param name="phases">2; or 3 for up to <see cref="ThreePhaseAtlas.MaximumCapacitorCount"/> capacitors in one part.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public AtlasShard(int capacitors, int number, int count, int phases = 2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(phases, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(phases, 3);
        ArgumentOutOfRangeException.ThrowIfLessThan(capacitors, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(capacitors, MostCapacitors(phases));
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(number, count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, phases == 2 ? MaximumCount : 1);
        PhaseCount = phases;
        CapacitorCount = capacitors;
        Number = number;
        Count = count;
    }

    /// <summary>The number of flying capacitors of every network.</summary>
    public int CapacitorCount { get; }

    /// <summary>The number of phases of every network.</summary>
    public int PhaseCount { get; }

    /// <summary>Which part, from 1.</summary>
    public int Number { get; }

    /// <summary>How many parts there are.</summary>
    public int Count { get; }

    /// <summary>The most flying capacitors of networks of so many phases, 2 or 3.</summary>
    /// <param name="phases">The number of phases.</param>
    public static int MostCapacitors(int phases) => phases == 2 ? Atlas.MaximumCapacitorCount : ThreePhaseAtlas.MaximumCapacitorCount;

    /// <summary>The name of its file, such as <c>atlas-7-012-of-512.shard</c>, of three phases <c>atlas-4-3-phases-1-of-1.shard</c>: in the order of names the parts are in order.</summary>
    public string FileName
    {
        get
        {
            string count = Count.ToString(CultureInfo.InvariantCulture);
            string number = Number.ToString(CultureInfo.InvariantCulture).PadLeft(count.Length, '0');
            return string.Create(CultureInfo.InvariantCulture, $"atlas-{CapacitorCount}-{(PhaseCount == 2 ? string.Empty : "3-phases-")}{number}-of-{count}{Extension}");
        }
    }

    /// <summary>What the names of the files of parts end with.</summary>
    public const string Extension = ".shard";

    /// <summary>Part and number of parts, as <c>12/512</c>.</summary>
    public string Fraction => string.Create(CultureInfo.InvariantCulture, $"{Number}/{Count}");

    /// <summary>Reads part and number of parts, as <see cref="Fraction"/> writes them.</summary>
    /// <param name="text">Such as <c>12/512</c>.</param>
    /// <param name="number">The part, from 1.</param>
    /// <param name="count">The number of parts.</param>
    /// <returns>Whether the text is one, and the part one of these.</returns>
    public static bool TryParseFraction([NotNullWhen(true)] string? text, out int number, out int count)
    {
        count = 0;
        number = 0;
        return text?.Split('/') is [{ } first, { } second]
            && int.TryParse(first, NumberStyles.None, CultureInfo.InvariantCulture, out number)
            && int.TryParse(second, NumberStyles.None, CultureInfo.InvariantCulture, out count)
            && number >= 1 && number <= count && count <= MaximumCount;
    }

    /// <summary>Size and part, in words.</summary>
    public override string ToString() =>
        $"part {Fraction} of the networks of {(PhaseCount == 2 ? string.Empty : "three phases and ")}{UnitText.Count(CapacitorCount, "capacitor", "capacitors")}";
}
