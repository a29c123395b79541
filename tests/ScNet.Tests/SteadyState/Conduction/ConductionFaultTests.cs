using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>What is said of operating points that do not exist, and of which phase it is said.</summary>
public sealed class ConductionFaultTests
{
    private static readonly Converter s_stage = Stages.StepDown(new(3, 10));

    [Fact]
    public void A_time_that_is_not_found_names_its_phase()
    {
        Diagnostic found = Only(ConductionFault.NoTime(s_stage, s_stage.Modes[0], [1]));
        Assert.StartsWith("No length of phase 2 brings the inductor's current to zero", found.Message, StringComparison.Ordinal);
        Assert.Equal(2, found.Phase);
    }

    [Fact]
    public void Several_times_that_are_not_found_name_all_phases_and_belong_to_none()
    {
        Diagnostic found = Only(ConductionFault.NoTime(s_stage, s_stage.Modes[0], [1, 3]));
        Assert.StartsWith("No length of phase 2, 4 brings", found.Message, StringComparison.Ordinal);
        Assert.Null(found.Phase);
    }

    [Fact]
    public void Without_any_event_there_is_no_periodic_state()
    {
        Diagnostic found = Only(ConductionFault.NoTime(s_stage, s_stage.Modes[0], []));
        Assert.Equal("The operating point has no periodic state.", found.Message);
        Assert.Null(found.Phase);
    }

    [Fact]
    public void Diodes_that_agree_with_nothing_are_told_from_diodes_that_are_not_there()
    {
        Diagnostic none = Only(ConductionFault.Diodes(s_stage, s_stage.Modes[0], 1, hasCandidates: false));
        Diagnostic wrong = Only(ConductionFault.Diodes(s_stage, s_stage.Modes[0], 2, hasCandidates: true));
        Assert.StartsWith("Phase 2 leaves an inductor with a current no path", none.Message, StringComparison.Ordinal);
        Assert.StartsWith("In phase 3 no choice of conducting body diodes agrees", wrong.Message, StringComparison.Ordinal);
        Assert.Equal((2, 3), (none.Phase, wrong.Phase));
    }

    [Fact]
    public void A_voltage_that_no_frequency_gives_is_stated_with_its_unit()
    {
        ScNetException exception = ConductionFault.NoFrequency(s_stage, s_stage.Modes[0], 11);
        Diagnostic found = Only(exception);
        Assert.Equal("No switching frequency gives an output voltage of 11 V with these on-times and this load.", found.Message);
        Assert.Null(found.Phase);
        Assert.StartsWith($"Mode '{s_stage.Modes[0].Name}' of 'step-down' has no such operating point:", exception.Message, StringComparison.Ordinal);
    }

    private static Diagnostic Only(ScNetException exception)
    {
        Diagnostic found = Assert.Single(exception.Diagnostics);
        Assert.Equal((DiagnosticSeverity.Error, DiagnosticCodes.NoPeriodicState, "coil"), (found.Severity, found.Code, Assert.Single(found.Elements)));
        return found;
    }
}
