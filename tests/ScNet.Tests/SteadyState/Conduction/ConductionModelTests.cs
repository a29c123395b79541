using ScNet.Analysis;
using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>What the model takes, what it refuses and which modes it serves.</summary>
public sealed class ConductionModelTests
{
    private const double Frequency = 1e6;

    [Fact]
    public void The_only_mode_need_not_be_named()
    {
        Converter stage = Stages.StepDown(new(3, 10));
        ConductionModel model = ConductionModel.Of(stage);
        Assert.Same(stage, model.Converter);
        Assert.Same(stage.Modes[0], model.Mode);
        Assert.Equal($"step-down, mode {stage.Modes[0]}", model.ToString());
    }

    [Fact]
    public void One_of_several_modes_is_named_and_is_the_converters_own()
    {
        Converter two = Converter.Create("two modes").Input("vin").Output("vout").Duties(0.3, 0.7)
            .Inductor("coil", "x", "vout", Stages.Henries, 0.01).Switch("high", "vin", "x").Switch("low", "x", Converter.ReferenceNode)
            .Mode("short", ("high", 1), ("low", 2)).Mode("long", ("high", 2), ("low", 1)).Build();
        Assert.Same(two.Modes[1], ConductionModel.Of(two, two.Modes[1]).Mode);
        Assert.Throws<ArgumentException>("mode", () => ConductionModel.Of(two));
        Assert.Throws<ArgumentException>("mode", () => ConductionModel.Of(two, Stages.StepDown(new(3, 10)).Modes[0]));
        Assert.Throws<ArgumentNullException>("converter", () => ConductionModel.Of(null!));

        // the volt-seconds of 0.3 and of 0.7, less the resistances of 1.01 Ω
        Assert.Equal(3 - 1.01, ConductionModel.Of(two, two.Modes[0]).At(new(10, 1, Frequency)).AverageOutputVoltageVolts, 1e-12);
        Assert.Equal(7 - 1.01, ConductionModel.Of(two, two.Modes[1]).At(new(10, 1, Frequency)).AverageOutputVoltageVolts, 1e-12);
    }

    [Fact]
    public void A_mode_with_a_result_is_served_where_a_current_ends_a_phase()
    {
        Assert.True(Serves(Stages.StepDown(new(3, 10))));
        Assert.False(Serves(OperatedConverters.Half().Build()));

        // with a coil that ends none
        Assert.False(Serves(Converter.Create("continuous").Input("vin").Output("vout").Duties(0.3, 0.7).Inductor("coil", "x", "vout", Stages.Henries, 0.01)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", Converter.ReferenceNode, on: 2).Build()));
    }

    [Fact]
    public void A_mode_that_leaves_an_inductor_to_body_diodes_is_served_where_there_are_some()
    {
        Assert.True(Serves(Stages.WithDeadTimes(0.01)));
        Assert.True(Serves(Stages.WithDeadTimes(0.01, lowVolts: null)));
        Assert.False(Serves(Stages.WithDeadTimes(0.01, lowVolts: null, highVolts: null)));
    }

    [Fact]
    public void A_mode_with_another_error_is_not_served()
    {
        // the switches of phase 1 short the input
        Converter shorted = Converter.Create("short").Input("vin").Output("vout").Duties(0.3, 0.7)
            .Inductor("coil", "x", "vout", Stages.Henries, 0.01)
            .Switch("high", "vin", "x", on: 1, diodeVolts: 0.7).Switch("low", "x", Converter.ReferenceNode, on: [1, 2], diodeVolts: 0.7).Build();
        ModeOutcome outcome = Outcome(shorted);
        Assert.Contains(outcome.Diagnostics, d => d.Severity == DiagnosticSeverity.Error && d.Code != DiagnosticCodes.InductorInterrupted);
        Assert.False(ConductionModel.Serves(outcome));
    }

    [Fact]
    public void An_inductor_without_a_path_is_not_served_beside_another_error()
    {
        // in phase 3 neither the coil nor the load has a path
        Converter both = Converter.Create("both").Input("vin").Output("vout", LoadKind.Current).Duties(0.3, 0.6, 0.1)
            .Inductor("coil", "x", "a", Stages.Henries, 0.01).Capacitor("out", "a", Converter.ReferenceNode, 1e-6)
            .Switch("high", "vin", "x", on: 1, diodeVolts: 0.7).Switch("low", "x", Converter.ReferenceNode, on: 2, diodeVolts: 0.7)
            .Switch("load", "a", "vout", on: [1, 2]).Build();
        ModeOutcome outcome = Outcome(both);
        Assert.All([DiagnosticCodes.InductorInterrupted, DiagnosticCodes.LoadInterrupted], code => Assert.Contains(outcome.Diagnostics, d => d.Code == code));
        Assert.False(ConductionModel.Serves(outcome));
    }

    [Fact]
    public void Voltages_that_are_no_numbers_and_values_out_of_range_are_refused()
    {
        ConductionModel model = ConductionModel.Of(Stages.StepDown(new(3, 10)));
        Assert.Throws<ArgumentOutOfRangeException>("outputVoltageVolts", () => model.AtOutputVoltage(10, 0.1, double.NaN, Frequency));
        Assert.Throws<ArgumentOutOfRangeException>("outputVoltageVolts", () => model.AtOutputVoltage(10, 0.1, double.PositiveInfinity, Frequency));
        Assert.Throws<ArgumentOutOfRangeException>("inputVoltageVolts", () => model.AtOutputVoltage(0, 0.1, 3, Frequency));
        Assert.Throws<ArgumentOutOfRangeException>("frequencyHz", () => model.AtOutputVoltage(10, 0.1, 3, 0));
    }

    [Fact]
    public void Phases_that_all_end_with_a_current_leave_no_time_that_is_fixed()
    {
        Converter all = Converter.Create("all end").Input("vin").Output("vout").Duties(0.3, 0.7)
            .Inductor("coil", "x", "vout", Stages.Henries, 0.01, untilZero: [1, 2])
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", Converter.ReferenceNode, on: 2).Build();
        ArgumentException exception = Assert.Throws<ArgumentException>(() => ConductionModel.Of(all).AtOutputVoltage(10, 0.1, 3, Frequency));
        Assert.Contains("'all end' needs phases of fixed length", exception.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ConductionModel.Of(Stages.WithDeadTimes(0.01)).AtOutputVoltage(10, 0.1, 3, Frequency));
    }

    /// <summary>
    /// Two coils, one of which ends a phase: the times of the other phases are kept. Each pulse of an ideal step-down stage brings
    /// the charge of a triangle, base D/f₀ · V_in/V_out, height (V_in − V_out) D/(f₀ L).
    /// </summary>
    [Fact]
    public void One_coil_of_several_that_ends_a_phase_is_enough()
    {
        Converter filtered = Converter.Create("filtered").Input("vin").Output("vout").Duties(0.15, 0.85)
            .Inductor("filter", "vin", "a", 1e-12, 1e-9).Capacitor("in", "a", Converter.ReferenceNode, 1, esrOhms: 1e-9)
            .Inductor("coil", "x", "vout", Stages.Henries, 1e-9, untilZero: 2)
            .Switch("high", "a", "x", on: 1, 1e-9).Switch("low", "x", Converter.ReferenceNode, on: 2, 1e-9).Build();
        const double OnTime = 0.15 / Frequency;
        double charge = 0.5 * OnTime * (10 / 2.5) * (10 - 2.5) * OnTime / Stages.Henries;
        ConductionPoint point = ConductionModel.Of(filtered).AtOutputVoltage(10, 0.05, 2.5, Frequency);
        Assert.Equal(0.05 / charge, point.Point.FrequencyHz, 1e-4 * 0.05 / charge);
        Assert.Equal(OnTime * point.Point.FrequencyHz, point.ConductingShares[0], 1e-12);
    }

    [Fact]
    public void Several_fixed_phases_keep_their_times()
    {
        // two on-times with a rest of the switching node between them
        Converter stage = Stages.ThreeLevel(1e-6);
        ConductionPoint point = ConductionModel.Of(stage).AtOutputVoltage(10, 0.05, 3, Frequency);
        double hertz = point.Point.FrequencyHz;
        Assert.Equal([0.2 / Frequency, 0.2 / Frequency], new[] { point.ConductingShares[0] / hertz, point.ConductingShares[2] / hertz }, Closeness.Within(1e-18));
        Assert.Equal(3, point.AverageOutputVoltageVolts, 1e-9);
    }

    [Fact]
    public void Points_say_how_they_conduct()
    {
        ConductionModel model = ConductionModel.Of(Stages.StepDown(new(3, 10)));
        string mode = model.Mode.ToString();
        Assert.StartsWith($"step-down, mode {mode}, continuous conduction, 10 V input, 3 A load, 1E+06 Hz: ", model.At(new(10, 3, Frequency)).ToString(), StringComparison.Ordinal);
        Assert.StartsWith($"step-down, mode {mode}, discontinuous conduction, 10 V input", model.At(new(10, 0.1, Frequency)).ToString(), StringComparison.Ordinal);
    }

    private static bool Serves(Converter converter) => ConductionModel.Serves(Outcome(converter));

    private static ModeOutcome Outcome(Converter converter) => ConverterAnalysis.Of(converter).Modes[0];
}
