using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Reconfiguration;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>Why a candidate is rejected, and whether another area, load or process might admit it, at one operating point.</summary>
public sealed class CandidateDesignTests
{
    private static readonly Candidate s_half = Candidate.Of(SeriesParallel.StepDown(2));

    private static readonly Candidate s_gears = Candidate.Of(Gears.Of([SeriesParallel.StepDown(3), SeriesParallel.StepDown(2)], OverlayHeuristic.Default));

    // ideal ratios decide: half of 2 V is 1 V, which is not more than 1 V
    [Theory]
    [InlineData(2, 2, 0.9, true)]
    [InlineData(2, 2, 1.0, false)]
    [InlineData(2, 2, 1.2, false)]
    [InlineData(1.5, 2.5, 0.9, false)]
    public void A_converter_that_only_its_impedance_keeps_from_the_output_is_open(double least, double most, double output, bool isOpen)
    {
        CandidateDesign design = Of(s_half, With(new(least, most), output, 1e3));
        Assert.False(design.IsAccepted);
        Assert.Equal(isOpen, design.IsOpen);
    }

    [Fact]
    public void One_gear_that_reaches_the_output_is_enough()
    {
        Assert.True(Of(s_gears, With(new(2.8, 2.8), 1.2, 1e3)).IsOpen);
        Assert.False(Of(s_gears, With(new(2.8, 2.8), 1.5, 1e3)).IsOpen);
    }

    // more than half of the input, which its own duty gives, and what the coil does not carry
    [Fact]
    public void A_stage_whose_duty_reaches_the_output_is_open()
    {
        CandidateDesign design = Of(LossyStages.StepDown, With(new(2, 2), 1.4, 3));
        Assert.Equal(["no sizes within the area carry the load"], design.Rejections);
        Assert.True(design.IsOpen);
    }

    // the duty 0.995 of the ideal ratio is there, but what 50 mA take in the coil alone, 5 mV, asks for 0.9975, and the last duty is 239/240
    [Fact]
    public void A_stage_whose_duties_end_before_what_its_resistances_take_is_open()
    {
        CandidateDesign design = Of(LossyStages.StepDown, With(new(2, 2), 1.99, 0.05));
        Assert.Equal(["1.99 V at 50 mA from 2 V is not held: no duty gives 1.99 V from 2 V"], design.Rejections);
        Assert.True(design.IsOpen);
    }

    [Fact]
    public void What_has_no_result_or_no_duty_is_rejected_and_not_open()
    {
        Converter shorted = Converter.Create("Shorted").Input("vin").Output("vout").Capacitor("fly", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Switch("s5", "vin", "vout", [1, 2]).Build();
        Candidate candidate = Candidate.Of(shorted);
        CandidateDesign none = Of(candidate, With(new(2, 2), 0.9, 1e-3));
        Assert.Equal([candidate.Analysis!.Modes[0].Diagnostics.First(d => d.Severity == DiagnosticSeverity.Error).Message], none.Rejections);
        Assert.False(none.IsOpen);

        Converter three = Converter.Create("Three").Input("vin").Output("vout").Phases(3).Inductor("coil", "x", "vout", 1e-6)
            .Switch("high", "vin", "x", 1).Switch("low", "x", "gnd", [2, 3]).Build();
        Assert.Equal(["no duty regulates it: it has an odd number of phases"], Of(Candidate.Of(three), With(new(2, 2), 0.9, 1e-3)).Rejections);
    }

    // 1.9 V of 2 V leave 0.1 V, which switches of a thousand times the resistance take by far: no load is small enough to size for
    [Fact]
    public void Where_no_duty_is_left_at_a_corner_no_larger_sizes_are_tried()
    {
        Requirement typical = With(new(2, 2), 1.9, 0.05);
        Assert.True(Of(LossyStages.StepDown, typical).IsAccepted);
        CandidateDesign design = Of(LossyStages.StepDown, typical with { Process = typical.Process with { Corners = [new("weak", 1000, 1)] } });
        string reason = Assert.Single(design.Rejections);
        Assert.StartsWith("in corner weak 1.9 V at 50 mA from 2 V is not held: ", reason, StringComparison.Ordinal);
        Assert.DoesNotContain("no sizes", reason, StringComparison.Ordinal);
        Assert.True(design.IsOpen);
    }

    // 50 mA through 10 Ω take 0.5 V of 1.2 V, which alone would do for 1 V
    [Fact]
    public void Where_the_source_takes_too_much_the_end_of_life_is_told()
    {
        CandidateDesign design = Of(Candidate.Linear, With(new(1.2, 2), 1, 0.05) with { SourceOhms = 10 });
        Assert.Contains("resistance of the source", Assert.Single(design.Rejections), StringComparison.Ordinal);
        Assert.True(design.IsOpen);
        Assert.Empty(Of(Candidate.Linear, With(new(1.2, 2), 1, 0.05)).Rejections);
        CandidateDesign below = Of(Candidate.Linear, With(new(0.8, 2), 1, 0.05));
        Assert.Equal("1 V at 50 mA from 800 mV is not held: the input of 800 mV is below the 1 V that is wanted", Assert.Single(below.Rejections));
    }

    // one load at one voltage: charge over current, by hand
    [Fact]
    public void Candidates_are_ranked_by_life_where_a_charge_is_told_and_else_by_input_power()
    {
        Requirement flat = With(new(2, 2), 1, 0.05);
        Assert.Equal(-0.1, Of(Candidate.Linear, flat).Merit, 1e-12);
        Assert.Equal(20, Of(Candidate.Linear, flat with { CellCoulombs = 3600 }).Merit, 1e-9);
    }

    [Fact]
    public void Without_a_limit_no_ripple_is_looked_at()
    {
        Requirement free = With(new(2, 2), 0.9, 1e-3);
        Assert.Null(Of(s_half, free).Ripple);
        CandidateDesign limited = Of(s_half, free with { RippleVolts = 1, OutputFarads = 1e-6 });
        Assert.Equal(1, limited.Ripple!.Parts);
        Assert.Empty(limited.Notes);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Work_that_is_stopped_leaves_no_design(bool isStage) => Assert.Throws<OperationCanceledException>(
        () => CandidateDesign.Of(isStage ? LossyStages.StepDown : s_half, With(new(2, 2), 0.9, 1e-3), new CancellationToken(canceled: true)));

    [Fact]
    public void What_a_ranked_candidate_tells_is_that_of_its_design()
    {
        CandidateDesign design = Of(s_half, With(new(2, 2), 0.9, 1e-3));
        RankedCandidate ranked = new(3, design, ["reason"]);
        Assert.Equal((3, 1), (ranked.Rank, ranked.Parts));
        Assert.Equal(0.9e-3, ranked.OutputWatts, 1e-12);
        Assert.Equal(ranked.InputWatts - 0.9e-3, ranked.LossWatts, 1e-12);
        Assert.Equal(1, ranked.Efficiency * ranked.InputWatts / 0.9e-3, 1e-9);
        Assert.Equal(design.Sized!.AreaSquareMetres, ranked.AreaSquareMetres);
        Assert.InRange(ranked.AreaSquareMetres, 1e-9, 1e-6 * (1 + 1e-6));
        double gap = ranked.RelativeGap!.Value;
        Assert.InRange(gap, Math.Max(1e-6, design.RelativeGap!.Value) * (1 - 1e-9), 10 * Math.Max(1e-6, design.RelativeGap.Value));
        Assert.Equal(Math.Round(Math.Log10(gap)), Math.Log10(gap), 1e-9);
    }

    private static CandidateDesign Of(Candidate candidate, Requirement requirement) => CandidateDesign.Of(candidate, requirement, CancellationToken.None);

    private static Requirement With(Interval<double> inputVolts, double outputVolts, double amperes) => new()
    {
        Name = "one",
        InputVolts = inputVolts,
        OutputVolts = [outputVolts],
        Loads = [new("on", amperes, 1)],
        Process = new Process
        {
            Name = "invented",
            Switches = [DemoDevices.NType1V8],
            Capacitors = [DemoDevices.Plate3V6],
            Inductors = [new InductorDevice { Name = "coil", Source = "invented", Henries = 1e-6, Ohms = 0.1, MaximumAmperes = 1 }],
        },
        AreaSquareMetres = 1e-6,
        FrequencyHz = new(1e4, 1e8),
    };
}
