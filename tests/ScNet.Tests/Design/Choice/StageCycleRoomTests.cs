using ScNet.Design.Choice;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>How slow a cycle may be where a coil sees no voltage, and so has no ripple.</summary>
public sealed class StageCycleRoomTests
{
    // at the duty 1/2 of three levels the coil is between halves of the input; the capacitor of 1 µF takes I/2 of a period and may swing by a fifth
    // of 1.5 V. The coil carries 0.5 A
    [Fact]
    public void Without_ripple_a_coil_bounds_the_current_alone()
    {
        Process process = LossyStages.Process with { Inductors = [LossyStages.Coil with { MaximumAmperes = 0.5 }] };
        Candidate three = LossyStages.ThreeLevel;
        StageCycle cycle = new(LossyStages.Sized(three, process, 120, new int[5], [1e-6, 50, 50, 50, 50]), three.Duties.AnalysisAt(120));
        Assert.Equal(1, cycle.LeastHertz(3, 0.2) / (0.2 / 2 / (1e-6 * 1.5 / 5)), 1e-12);
        Assert.Equal(1, cycle.LeastHertz(3, 0.5) / (0.5 / 2 / (1e-6 * 1.5 / 5)), 1e-12);
        Assert.True(double.IsPositiveInfinity(cycle.LeastHertz(3, 0.6)));
    }
}
