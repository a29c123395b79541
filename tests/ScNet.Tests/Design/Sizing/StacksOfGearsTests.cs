using ScNet.Design.Sizing;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Sizing;

/// <summary>What switches of a halver and a doubler must withstand when one follows the other.</summary>
public sealed class StacksOfGearsTests
{
    // The halver runs from 1 V to 3 V, the doubler at 2 V, where one can follow the other. The doubler's capacitor then holds 2 V at an output of 4 V: in the
    // halver's first phase the lower switch to ground blocks up to the output's 4 V. In the modes themselves nothing blocks more: 3 V between the halver's input
    // and its lower plate at ground, 4 V between the doubler's output and ground
    [Fact]
    public void A_change_of_modes_happens_at_an_input_that_both_have()
    {
        SizingPoint[] points = [new("1/2", 1, 0.45, 1e-4), new("1/2", 3, 1.4, 1e-4), new("2", 2, 3.8, 1e-4)];
        SizedDesign design = SizedDesign.Of(
            HalverAndDoubler.Analysis, InventedSizing.Process(Sized.Switch with { RatedVolts = 4 }), points, new AreaBudget(1e-7), InventedSizing.Frequencies);
        Assert.All(design.Converter.Switches, s => Assert.Equal(1, s.Count));
    }
}
