using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>Which kinds a stage begins with, and when it changes them.</summary>
public sealed class StageKindsTests
{
    // the flying capacitor of three levels takes D I/f in a period and may swing by a fifth of the half of 3 V: 0.25 · 50 mA/(1 MHz · 0.3 V) = 42 nF.
    // Of 10 nF/mm² these are 4.2 mm², a hundred times that of the dense kind, which alone has room on 1 mm²
    [Fact]
    public void A_kind_of_less_area_is_found_where_the_other_has_no_room()
    {
        CapacitorDevice sparse = LossyStages.Capacitor with { Name = "sparse", FaradsPerSquareMetre = 1e-2 };
        CapacitorDevice dense = sparse with { Name = "dense", FaradsPerSquareMetre = 1 };
        foreach (CapacitorDevice[] kinds in (CapacitorDevice[][])[[sparse, dense], [dense, sparse]])
        {
            StageDesign design = Try(LossyStages.ThreeLevel, LossyStages.Process with { Capacitors = kinds }, 1e6)!;
            Assert.Equal("dense", design.Typical.Capacitors[0].Device.Name);
        }

        Assert.Null(Try(LossyStages.ThreeLevel, LossyStages.Process with { Capacitors = [sparse] }, 1e6));
    }

    // beside 100 W of the control what a thousandth less of the gates' charge saves is nothing; without them it is worth the other kind
    [Theory]
    [InlineData(100, "first")]
    [InlineData(0, "second")]
    public void A_kind_that_saves_less_than_a_millionth_of_all_losses_is_not_taken(double fixedWatts, string expected)
    {
        SwitchDevice first = LossyStages.Switch with { Name = "first" };
        SwitchDevice second = first with { Name = "second", GateChargeCoulombsPerMicrometre = first.GateChargeCoulombsPerMicrometre * 0.999 };
        Process process = LossyStages.Process with { Switches = [first, second], Control = new ControlOverhead { FixedWatts = fixedWatts } };
        Assert.All(Try(LossyStages.StepDown, process, 1e8)!.Typical.Switches, s => Assert.Equal(expected, s.Device.Name));
    }

    // at the middle of two duties, each as near as the other
    [Fact]
    public void Half_way_between_two_duties_the_lower_one_counts()
    {
        StageDuties duties = LossyStages.StepDown.Duties;
        double volts = (duties.RatioAt(60) + duties.RatioAt(61)) / 2;
        Assert.Equal((60, 0.5), duties.Of(volts));
        Assert.Equal(60, Try(LossyStages.StepDown, LossyStages.Process, 1e8, new(1, volts, 0.05, 1, IsEnd: false))!.Points[0].Node);
    }

    private static StageDesign? Try(Candidate candidate, Process process, double mostHertz, ProfilePoint? point = null)
    {
        Requirement requirement = new()
        {
            Name = "stage",
            InputVolts = new(3, 3.6),
            OutputVolts = [0.75],
            Loads = [new("on", 0.05, 1)],
            Process = process,
            AreaSquareMetres = 1e-6,
            FrequencyHz = new(1e5, mostHertz),
        };
        return StageDesign.Try(candidate, requirement, DeviceFit.Of(candidate.Analysis!, requirement), [point ?? new(3, 0.75, 0.05, 1, IsEnd: false)], 1, out _);
    }
}
