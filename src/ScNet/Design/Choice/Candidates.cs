using Fractions;
using ScNet.Analysis;
using ScNet.Design.Requirements;
using ScNet.Netlists;
using ScNet.Reconfiguration;

namespace ScNet.Design.Choice;

/// <summary>The candidates that a requirement asks for, and what is wrong with those that there are not.</summary>
public sealed class Candidates
{
    private Candidates(IReadOnlyList<Candidate> all, IReadOnlyList<Diagnostic> diagnostics)
    {
        All = [.. all];
        Diagnostics = [.. diagnostics];
    }

    /// <summary>The candidates, each with a name of its own, in the order in which the requirement asks for them.</summary>
    public IReadOnlyList<Candidate> All { get; }

    /// <summary>Files that cannot be read, families that do not exist and sizes that a family does not have.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>The families, beside files, that a requirement may ask for.</summary>
    public static IReadOnlyList<string> Families => [.. FamilyCandidates.Names];

    /// <summary>Builds the candidates of a requirement; where it names none, those of every class that suit its ratios.</summary>
    /// <param name="requirement">The requirement.</param>
    /// <param name="directory">The folder from which the paths of netlists count.</param>
    /// <param name="overlays">How networks of one ratio become gears of one converter; <see cref="OverlayHeuristic.Default"/> where left out.</param>
    public static Candidates Of(Requirement requirement, string directory = ".", IOverlayMethod? overlays = null)
    {
        overlays ??= OverlayHeuristic.Default;
        ArgumentNullException.ThrowIfNull(requirement);
        ArgumentNullException.ThrowIfNull(directory);
        Interval<Fraction> ratios = RatioRange.Of(requirement);
        List<Diagnostic> diagnostics = [];
        List<Candidate> all = [];
        foreach (CandidateRequest request in requirement.Candidates)
        {
            all.AddRange(request.File is { } file
                ? OfFile(Path.Combine(directory, file), diagnostics)
                : OfFamilies(request, ratios, overlays, diagnostics));
        }

        if (requirement.Candidates.Count == 0)
        {
            all.AddRange(KnownCandidates.Of(ratios, overlays));
        }

        return new Candidates(Distinct(all), diagnostics);
    }

    /// <summary>The names.</summary>
    public override string ToString() => string.Join("; ", All);

    private static IEnumerable<Candidate> OfFile(string path, List<Diagnostic> diagnostics)
    {
        NetlistReading reading = NetlistReader.ReadFile(path);
        if (reading.Converter is { } converter)
        {
            return [Candidate.Of(converter)];
        }

        diagnostics.AddRange(reading.Diagnostics);
        return [];
    }

    private static Candidate[] OfFamilies(CandidateRequest request, Interval<Fraction> ratios, IOverlayMethod overlays, List<Diagnostic> diagnostics)
    {
        string[] unknown = [.. request.Families.Except(FamilyCandidates.Names)];
        foreach (string name in unknown)
        {
            diagnostics.Add(new Diagnostic(
                DiagnosticSeverity.Error, DiagnosticCodes.WrongValue,
                $"There is no family {Quoted.Name(name)} of candidates. The families: {string.Join(", ", FamilyCandidates.Names)}.", [name], position: request.Position));
        }

        if (unknown.Length > 0)
        {
            return [];
        }

        Candidate[] built = request.AreGears
            ? OfGears(GearNetworks(request, ratios), overlays)
            : [.. request.Families.SelectMany(f => FamilyCandidates.Of(f, request.Sizes, ratios, overlays)).Where(c => Counts(request, c))];
        if (built.Length == 0)
        {
            diagnostics.Add(new Diagnostic(
                DiagnosticSeverity.Error, DiagnosticCodes.WrongValue,
                $"No candidate comes of {request}: the family has no member of these sizes{(request.Ratios.Count > 0 ? " and ratios" : string.Empty)}{(request.AreGears ? ", or none that gears can be made of" : string.Empty)}.", request.Families, position: request.Position));
        }

        return built;
    }

    // of named ratios one network each, of the first family that has it
    private static Converter[] GearNetworks(CandidateRequest request, Interval<Fraction> ratios)
    {
        IEnumerable<Converter> all = request.Families.SelectMany(f => FamilyCandidates.Networks(f, request.Sizes, ratios)).DistinctBy(n => n.Name);
        return request.Ratios.Count == 0
            ? [.. all]
            : [.. all.Where(n => n.Modes.Count == 1).Select(n => (Network: n, ModeAnalysis.Of(n).Ratio))
                .Where(n => n.Ratio.TryGetFraction(out Fraction ratio) && request.Ratios.Contains(ratio))
                .DistinctBy(n => n.Ratio).Select(n => n.Network)];
    }

    // stages that a duty regulates have no ratio of their own
    private static bool Counts(CandidateRequest request, Candidate candidate) => request.Ratios.Count == 0
        || (!candidate.HasDuty && candidate.Analysis is { } analysis
            && analysis.Results.All(m => m.Ratio.TryGetFraction(out Fraction ratio) && request.Ratios.Contains(ratio)));

    private static Candidate[] OfGears(Converter[] networks, IOverlayMethod overlays) =>
        networks.Length == 0 || networks.Any(n => n.Modes.Count > 1 || !n.Phases.Select(p => p.Duty).SequenceEqual(networks[0].Phases.Select(p => p.Duty)))
            ? []
            : [Candidate.Of(Gears.Of(networks, overlays))];

    // a second one of the same name gets a number
    private static Candidate[] Distinct(List<Candidate> all)
    {
        HashSet<string> taken = [];
        return [.. all.Select(candidate =>
        {
            string name = candidate.Name;
            for (int number = 2; !taken.Add(name); number++)
            {
                name = $"{candidate.Name} ({number})";
            }

            return name == candidate.Name ? candidate : candidate.Named(name);
        })];
    }
}
