using System.Numerics;
using Fractions;
using ScNet.Reconfiguration;
using ScNet.Topologies;

namespace ScNet.Design.Choice;

/// <summary>Candidates of a family by its name, and the sizes for which it has one.</summary>
internal static class FamilyCandidates
{
    private const string FlyingCapacitor = "flying-capacitor", Fractional = "fraction", All = "all";

    // the stages of which there is one, whatever the size
    private static readonly (string Name, Func<Candidate> Build)[] s_single =
    [
        ("linear", () => Candidate.Linear),
        ("inductive", StageCandidates.StepDown),
        ("inductive-up", StageCandidates.StepUp),
        ("inductive-inverter", StageCandidates.Inverting),
        ("series-charged", StageCandidates.SeriesCharged),
        ("series-capacitor", StageCandidates.SeriesCapacitor),
    ];

    private static IEnumerable<Family> Sized => FamilyCatalogue.All.Where(f => f.Parameters.Count == 1);

    /// <summary>The names that a requirement may ask for.</summary>
    public static IReadOnlyList<string> Names =>
    [
        .. Sized.Select(f => f.Name).Distinct(), Fractional,
        .. s_single.Select(s => s.Name), FlyingCapacitor, All,
        .. Sized.Where(f => f.StepUpRatio is not null).Select(f => f.Name + StageCandidates.FedSuffix).Distinct(),
    ];

    /// <summary>The candidates of a family.</summary>
    /// <param name="family">One of <see cref="Names"/>.</param>
    /// <param name="sizes">Its smallest and largest size; of no meaning where there is one stage only.</param>
    /// <param name="ratios">The ratios that are asked for.</param>
    /// <param name="overlays">How networks of one ratio become gears of one converter.</param>
    public static IEnumerable<Candidate> Of(string family, Interval<int> sizes, Interval<Fraction> ratios, IOverlayMethod overlays)
    {
        if (s_single.FirstOrDefault(s => s.Name == family) is { Build: { } build })
        {
            return [build()];
        }

        if (family == All)
        {
            return KnownCandidates.Of(ratios, overlays);
        }

        if (family == FlyingCapacitor)
        {
            return Range(sizes).Where(n => n is >= 3 and <= FlyingCapacitorStage.MaximumLevels).Select(StageCandidates.FlyingCapacitor);
        }

        return family.EndsWith(StageCandidates.FedSuffix, StringComparison.Ordinal)
            ? Networks(family[..^StageCandidates.FedSuffix.Length], sizes, ratios).Where(n => n.Modes.Count == 1).Select(StageCandidates.Fed).OfType<Candidate>()
            : Networks(family, sizes, ratios).Select(n => Candidate.Of(n));
    }

    /// <summary>
    /// The switched-capacitor converters of a family, one per size and in the direction of the ratios: of fractions every one whose
    /// larger term is the size, of a family with a mode per ratio the modes that serve.
    /// </summary>
    public static IEnumerable<Converter> Networks(string family, Interval<int> sizes, Interval<Fraction> ratios)
    {
        bool isStepUp = ratios.Maximum!.Value > Fraction.One;
        if (family == Fractional)
        {
            return Range(sizes).Where(q => q <= FractionalDivider.MaximumTerm)
                .SelectMany(q => Enumerable.Range(1, q - 1).Where(p => BigInteger.GreatestCommonDivisor(p, q).IsOne).Select(p => (Less: p, More: q)))
                .Select(t => isStepUp ? FractionalDivider.Of(t.More, t.Less) : FractionalDivider.Of(t.Less, t.More));
        }

        FamilyOptions options = new(IsStepUp: isStepUp);
        return
            from form in Sized.Where(f => f.Name == family)
            from size in Range(sizes)
            where form.Accepts(size) && (!isStepUp || form.StepUpRatio is not null)
            let network = form.Build([size], options)
            let kept = network.Modes.Count == 1 ? network : Gears.Within(network, ratios)
            where kept is not null
            select kept;
    }

    private static IEnumerable<int> Range(Interval<int> sizes) => sizes.IsDetermined
        ? Enumerable.Range(sizes.Minimum!.Value, sizes.Maximum!.Value - sizes.Minimum.Value + 1)
        : [];
}
