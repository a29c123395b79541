using Fractions;
using ScNet.Analysis;

namespace ScNet.Design.Choice;

/// <summary>A converter that may be chosen: what it is made of is open, how it is connected is not.</summary>
public sealed class Candidate
{
    private readonly Func<Fraction, Converter>? _atDuty;
    private readonly Lazy<StageDuties> _duties;

    private Candidate(string name, CandidateKind kind, Converter? converter, Func<Fraction, Converter>? atDuty, Fraction maximumDuty)
    {
        MaximumDuty = maximumDuty;
        Name = name;
        Kind = kind;
        Converter = converter;
        Analysis = converter is null ? null : ConverterAnalysis.Of(converter);
        _atDuty = atDuty;
        _duties = new(() => new StageDuties(this));
    }

    /// <summary>The name, for people; no other candidate of one choice has it.</summary>
    public string Name { get; }

    /// <summary>Its class.</summary>
    public CandidateKind Kind { get; }

    /// <summary>The converter, its values those of a netlist or all one; null for a linear regulator. With inductors, at one of its duties.</summary>
    public Converter? Converter { get; }

    /// <summary>The analysis of <see cref="Converter"/>; null for a linear regulator.</summary>
    public ConverterAnalysis? Analysis { get; }

    /// <summary>Whether its duty regulates.</summary>
    public bool HasDuty => _atDuty is not null;

    /// <summary>The duty that it stays below; zero where none regulates.</summary>
    public Fraction MaximumDuty { get; }

    /// <summary>The duties at which it is worked out.</summary>
    internal StageDuties Duties => _duties.Value;

    /// <summary>The same elements at another duty.</summary>
    /// <param name="duty">The duty, as the family of the candidate counts it; for a netlist, the share of the odd phases in the period.</param>
    /// <exception cref="ArgumentOutOfRangeException">The stage has no such duty.</exception>
    /// <exception cref="InvalidOperationException">No duty regulates this candidate.</exception>
    public Converter AtDuty(Fraction duty) => _atDuty is { } build
        ? build(duty)
        : throw new InvalidOperationException($"Expected a candidate that a duty regulates, but '{Name}' has none.");

    /// <summary>A linear regulator.</summary>
    public static Candidate Linear { get; } = new("Linear regulator", CandidateKind.Linear, null, null, Fraction.Zero);

    /// <summary>A converter as a candidate.</summary>
    /// <param name="converter">
    /// The converter. With inductors, the share of its odd phases is its duty where it has an even number of phases; what an odd number of
    /// phases gives is one ratio.
    /// </param>
    /// <param name="name">The name; that of the converter where it is null.</param>
    public static Candidate Of(Converter converter, string? name = null)
    {
        ArgumentNullException.ThrowIfNull(converter);
        return new Candidate(
            name ?? converter.Name,
            KindOf(converter),
            converter,
            converter.Inductors.Count > 0 && converter.Phases.Count % 2 == 0 ? duty => ActivePhases.Scaled(converter, duty) : null,
            Fraction.One);
    }

    /// <summary>A stage that its duty regulates.</summary>
    /// <param name="name">The name.</param>
    /// <param name="maximumDuty">The duty that it stays below.</param>
    /// <param name="atDuty">The stage at a duty, always with the same elements.</param>
    internal static Candidate Of(string name, Fraction maximumDuty, Func<Fraction, Converter> atDuty)
    {
        Converter converter = atDuty(maximumDuty / 2);
        return new Candidate(name, KindOf(converter), converter, atDuty, maximumDuty);
    }

    /// <summary>The same candidate under another name.</summary>
    internal Candidate Named(string name) => new(name, Kind, Converter, _atDuty, MaximumDuty);

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private static CandidateKind KindOf(Converter converter) =>
        converter.Inductors.Count == 0 ? CandidateKind.SwitchedCapacitor
        : converter.Capacitors.Count == 0 ? CandidateKind.Inductive
        : CandidateKind.Hybrid;
}
