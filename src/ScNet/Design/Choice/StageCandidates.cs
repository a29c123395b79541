using Fractions;
using ScNet.Topologies;

namespace ScNet.Design.Choice;

/// <summary>The stages with inductors, each at any duty.</summary>
internal static class StageCandidates
{
    /// <summary>What follows the name of a family that feeds an inductor.</summary>
    public const string FedSuffix = "-fed";

    public static Candidate StepDown() => Of("Stacked inductive step-down", Fraction.One, d => InductiveStage.StepDown(d));

    public static Candidate StepUp() => Of("Stacked inductive step-up", Fraction.One, d => InductiveStage.StepUp(d));

    public static Candidate Inverting() => Of("Stacked inductive inverter", Fraction.One, d => InductiveStage.Inverting(d));

    /// <summary>The stage of a number of levels; a single flying capacitor that averages leave open is controlled at its even step.</summary>
    public static Candidate FlyingCapacitor(int levels) =>
        Of($"Flying-capacitor stage, {levels} levels", Fraction.One, d => ControlledSteps.Of(FlyingCapacitorStage.Of(levels, d), levels));

    public static Candidate SeriesCharged() => Of("Series-charged stage", new Fraction(1, 3), d => SeriesChargedStage.Of(d));

    public static Candidate SeriesCapacitor() => Of("Series-capacitor stage", new Fraction(1, 2), d => SeriesCapacitorStage.Of(d));

    /// <summary>A converter of one mode whose output feeds an inductor, with a rest after each of its phases.</summary>
    /// <exception cref="ArgumentException">It delivers nothing in some phase.</exception>
    public static Candidate Fed(Converter converter) =>
        Of($"{converter.Name} before an inductor", Fraction.One, d => InductorFed.WithRests(converter, d));

    private static Candidate Of(string name, Fraction maximumDuty, Func<Fraction, Converter> atDuty) => Candidate.Of(name, maximumDuty, atDuty);
}
