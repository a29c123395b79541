using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Sizing;

/// <summary>The least impedance that an area allows, where a round of the search misleads.</summary>
public sealed class LeastOhmsTests
{
    // of a ladder one round finds more than the one before; the sizes that are found prove that 64.7 Ω are had
    [Fact]
    public void What_some_sizes_reach_is_not_beyond_reach()
    {
        const double Ohms = 64.7, Ceiling = 3e8;
        ConverterAnalysis ladder = ConverterAnalysis.Of(Ladder.StepDown(3));
        double ideal = 2 * ladder.Modes[0].Require().Ratio.ToDouble();
        SizingPoint point = InventedSizing.Point(2, ideal - (Ohms * 1e-3), 1e-3);
        SizingSolution? found = new SizingSearch(InventedSizing.Task(ladder, [point], new AreaBudget(1e-8), frequencyHz: new(1e5, Ceiling))).Run();
        Assert.NotNull(found);
        Assert.True(found.Modes[0].Ohms(Ceiling) <= Ohms);
    }
}
