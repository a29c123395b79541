using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Tests.Design.Choice;

namespace ScNet.Tests.Design.Losses;

/// <summary>Diodes of switches that no current of a coil comes through.</summary>
public sealed class DiodesAsideTests
{
    // behind the ladder's capacitors there is no way on: all of the coil's current, that of the load, comes through "rest"
    [Fact]
    public void A_diode_that_could_conduct_but_has_no_current_is_not_listed()
    {
        IReadOnlyList<DiodeTerm> terms = Of(LossyStages.FedLadder.Converter!, out IReadOnlyList<int> without);
        Assert.Empty(without);
        Assert.Equal(["rest", "rest", "rest", "rest"], terms.Select(t => t.Element));
        Assert.All(terms, t => Assert.Equal(-1, t.PerAmpere, 1e-12));
    }

    private static IReadOnlyList<DiodeTerm> Of(Converter converter, out IReadOnlyList<int> without)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        RippleCurrents ripple = RippleCurrents.Of(analysis, [.. converter.Phases.Select(p => p.Duty.ToDouble())], out _);
        return DiodeConduction.Of(Sized.Of(converter), analysis, ripple, out without);
    }
}
