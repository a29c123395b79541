using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Design.Sizing;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>The kinds and points of a stage with inductors.</summary>
public sealed class StageDesignTests
{
    private static readonly InductorDevice s_lossy = LossyStages.Coil with { Name = "lossy", Ohms = 2 };

    // a large area is best with the kind of half the resistance, and so of half the gate, a small one with the kind that takes less of it
    [Theory]
    [InlineData(1e-6)]
    [InlineData(1e-9)]
    public void Of_all_kinds_those_that_lose_least_are_taken(double areaSquareMetres)
    {
        ProfilePoint[] points = [Point(3, 0.75, 0.05)];
        StageDesign design = Try(LossyStages.StepDown, LossyStages.Process, areaSquareMetres, points, out _)!;
        StagePoint[] served = [.. design.Points];
        StageProgram program = new(served, LossyStages.Options(LossyStages.StepDown, LossyStages.Process), LossyStages.Process.Inductors, new AreaBudget(areaSquareMetres), new(1e5, 1e8));
        double[] watts = [.. new int[][] { [0, 0], [0, 1], [1, 0], [1, 1] }.Select(chosen => Math.Exp(program.Solve(chosen).LogValue))];
        Assert.Equal(1, design.Watts / watts.Min(), 1e-5);
        Assert.True(watts.Max() > 1.01 * watts.Min());
        Assert.InRange(design.RelativeGap, 0, 1e-5);
    }

    [Fact]
    public void The_coil_that_loses_less_is_taken()
    {
        Assert.Equal("coil", CoilOf(LossyStages.Coil, s_lossy));
        Assert.Equal("coil", CoilOf(s_lossy, LossyStages.Coil));

        // of two alike the first
        Assert.Equal("coil", CoilOf(LossyStages.Coil, LossyStages.Coil with { Name = "alike" }));
        Assert.Equal("alike", CoilOf(LossyStages.Coil with { Name = "alike" }, LossyStages.Coil));

        static string CoilOf(params InductorDevice[] coils) =>
            Try(LossyStages.StepDown, LossyStages.Process with { Inductors = coils }, 1e-6, [Point(3, 0.75, 0.05)], out _)!.Inductors[0].Name;
    }

    // loads with a reserve of two in a thousand, at the ends of the range with the margin of corners; the nearest duty of 1/240
    [Fact]
    public void Points_have_a_reserve_and_the_nearest_duty()
    {
        ProfilePoint[] points = [Point(2.4, 0.602, 0.05), Point(2.4, 0.607, 0.01) with { IsEnd = true, Weight = 0.25 }];
        StageDesign design = Try(LossyStages.StepDown, LossyStages.Process, 1e-6, points, out _)!;
        Assert.Equal([60, 61], design.Points.Select(p => p.Node));
        Assert.Equal(0.05 * 1.002, design.Points[0].Point.LoadAmperes, 1e-12);
        Assert.Equal(0.01 * 1.002 * 1.5, design.Points[1].Point.LoadAmperes, 1e-12);
        Assert.Equal([1, 0.25], design.Points.Select(p => p.Weight));
    }

    // of 1 · 50 mA · 0.6 V, 0.3 · 100 mA · 1.2 V and 1 · 20 mA · 1.2 V the second counts most
    [Fact]
    public void The_typical_converter_is_that_of_the_point_that_counts_most()
    {
        ProfilePoint[] points = [Point(2.4, 0.6, 0.05), Point(2.4, 1.2, 0.1) with { Weight = 0.3 }, Point(2.4, 1.8, 0.015)];
        StageDesign design = Try(LossyStages.StepDown, LossyStages.Process, 1e-6, points, out _)!;
        Assert.Equal(0.5, design.Typical.Converter.Phases[0].Duty.ToDouble());
        Assert.Equal(0.25, design.At(60).Converter.Phases[0].Duty.ToDouble());
        Assert.Equal(design.Typical.Converter.Switches.Select(s => s.Ohms), design.At(60).Converter.Switches.Select(s => s.Ohms));
        Assert.InRange(design.Typical.AreaSquareMetres, 1e-12, 1e-6);
    }

    [Fact]
    public void What_is_missing_is_told()
    {
        Assert.Equal("no duty gives 3 V from 2.4 V", ReasonOf(LossyStages.Process, 1e-6, Point(2.4, 3, 0.05)));
        Assert.Equal("the process has no inductor", ReasonOf(LossyStages.Process with { Inductors = [] }, 1e-6, Point(2.4, 0.6, 0.05)));
        Process weak = LossyStages.Process with { Inductors = [LossyStages.Coil with { MaximumAmperes = 0.04 }] };
        Assert.Equal("no sizes within the area carry the load", ReasonOf(weak, 1e-6, Point(2.4, 0.6, 0.05)));
        Process large = LossyStages.Process with { Inductors = [LossyStages.Coil with { AreaSquareMetres = 6e-7 }] };
        Assert.Equal("no sizes within the area carry the load", ReasonOf(large, 6e-7, Point(2.4, 0.6, 0.05)));
        Assert.NotNull(Try(LossyStages.StepDown, large, 7e-7, [Point(2.4, 0.6, 0.05)], out string none));
        Assert.Empty(none);
        Assert.Null(Try(StageCandidates.SeriesCapacitor(), large, 1e-6, [Point(2.4, 0.3, 0.05)], out string two));
        Assert.Equal("no sizes within the area carry the load", two);

        static string ReasonOf(Process process, double area, ProfilePoint point) =>
            Try(LossyStages.StepDown, process, area, [point], out string reason) is null ? reason : "there is a design";
    }

    private static ProfilePoint Point(double inputVolts, double outputVolts, double amperes) => new(inputVolts, outputVolts, amperes, 1, IsEnd: false);

    private static StageDesign? Try(Candidate candidate, Process process, double areaSquareMetres, ProfilePoint[] points, out string reason)
    {
        Requirement requirement = new()
        {
            Name = "stage",
            InputVolts = new(3, 3.6),
            OutputVolts = [0.6],
            Loads = [new("on", 0.05, 1)],
            Process = process,
            AreaSquareMetres = areaSquareMetres,
            FrequencyHz = new(1e5, 1e8),
        };
        return StageDesign.Try(candidate, requirement, DeviceFit.Of(candidate.Analysis!, requirement), points, 1.5, out reason);
    }
}
