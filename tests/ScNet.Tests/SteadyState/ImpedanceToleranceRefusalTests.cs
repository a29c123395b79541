using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>What tolerances are refused for before anything is worked out.</summary>
public sealed class ImpedanceToleranceRefusalTests
{
    // with a current load no limit of slow switching is asked for, which would refuse the frequency too
    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(1e-61)]
    [InlineData(1e61)]
    [InlineData(double.NaN)]
    public void A_worst_case_needs_a_frequency_in_range(double frequencyHz)
    {
        Converter loaded = OperatedConverters.Loaded(esrOhms: 0);
        ModeAnalysis analysis = ModeAnalysis.Of(loaded, loaded.Modes[0]);
        Assert.Throws<ArgumentOutOfRangeException>(nameof(frequencyHz), () => ImpedanceTolerance.WorstCase(analysis, frequencyHz, new ComponentTolerances(0.1)));
    }

    [Fact]
    public void Inductors_are_refused_even_where_the_run_is_stopped_already()
    {
        Converter stage = InductiveStages.StepDown(new Fraction(1, 4)).Build();
        using CancellationTokenSource source = new();
        source.Cancel();
        ScNetException refusal = Assert.Throws<ScNetException>(() => ImpedanceTolerance.MonteCarlo(
            ModeAnalysis.Of(stage, stage.Modes[0]), 1e6, new ComponentTolerances(0.1), 10, 1, null, source.Token));
        Assert.Equal(DiagnosticCodes.InductorsUnsupported, Assert.Single(refusal.Diagnostics).Code);
    }
}
