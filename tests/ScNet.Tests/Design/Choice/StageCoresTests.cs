using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>Inductors whose cores lose, in the sizes and the regulation of a stage.</summary>
public sealed class StageCoresTests
{
    private const double Input = 3.6, Output = 0.8, Load = 0.2, Henries = 1e-6;

    // a core's loss falls with the frequency to the power a − b, here with its first power: the stage runs faster for it
    [Fact]
    public void A_core_that_loses_counts_and_asks_for_a_higher_frequency()
    {
        RankedCandidate plain = Winner(0), lossy = Winner(2e-2);
        Assert.True(lossy.Efficiency < plain.Efficiency);
        RegulatedPoint before = plain.Modes[0].Hold(Input, Output, Load), after = lossy.Modes[0].Hold(Input, Output, Load);
        Assert.Equal((RegulationOutcome.Held, RegulationOutcome.Held), (before.Outcome, after.Outcome));
        Assert.True(after.FrequencyHz > 1.1 * before.FrequencyHz, $"{before.FrequencyHz} Hz, {after.FrequencyHz} Hz");
        Assert.Equal(0, before.LossOf(LossKind.Cores));

        // ripple D (1 − D) V/(f L) of the textbook, with a duty that drops raise a little
        double duty = Output / Input, ripple = duty * (1 - duty) * Input / (after.FrequencyHz * Henries);
        double law = 2e-2 * Math.Pow(after.FrequencyHz / 1e6, 1.5) * Math.Pow(ripple, 2.5);
        Assert.Equal(law, after.LossOf(LossKind.Cores), 0.1 * law);
    }

    private static RankedCandidate Winner(double coreWatts)
    {
        Process process = CoreRequirement.Process with
        {
            Inductors = [new InductorDevice { Name = "coil", Source = "invented", Henries = Henries, Ohms = 0.1, CoreWatts = coreWatts }],
        };
        Requirement requirement = CoreRequirement.Of(process, [new() { Families = ["inductive"] }]) with { Loads = [new("on", Load, 1, Output)] };
        return RankedChoice.Of(requirement, Candidates.Of(requirement).All).Winner!;
    }
}
