using ScNet.Analysis;
using ScNet.Design;
using ScNet.Topologies;

namespace ScNet.Tests.Design;

public sealed class BottomPlateSwingTests
{
    // series-parallel by three: n1 is at 2/3 in series and at 0 in parallel, n2 at 1/3 and at 0
    [Fact]
    public void The_upper_capacitor_of_a_series_string_swings_the_most()
    {
        BottomPlateSwing swing = Of(SeriesParallel.StepDown(3));
        Assert.Equal([Quantity.Exact(1, 3), Quantity.Exact(2, 3)], swing.PerVoltOfInput.Order(Comparer<Quantity>.Create((a, b) => a.ToDouble().CompareTo(b.ToDouble()))));
        Assert.Equal(Quantity.Exact(2, 3), swing.Worst);
        Assert.Single(swing.WorstCapacitors);
        // two equal capacitors: (1/9 + 4/9) / 2
        Assert.Equal(5.0 / 18, swing.WeightedSquare, 1e-15);
        Assert.Empty(swing.Undetermined);
    }

    // every bottom plate of a Dickson network swings by one stage: common practice, no source
    [Fact]
    public void Every_bottom_plate_of_a_Dickson_network_swings_by_one_stage()
    {
        BottomPlateSwing swing = Of(Dickson.StepDown(5));
        Assert.All(swing.PerVoltOfInput, s => Assert.Equal(Quantity.Exact(1, 5), s));
        Assert.Equal(0.04, swing.WeightedSquare, 1e-15);
        Assert.Equal(4, swing.WorstCapacitors.Count);
    }

    [Fact]
    public void A_bottom_plate_that_floats_is_named_and_not_taken_as_still()
    {
        Converter converter = Converter.Create("Half").Input("vin").Output("vout").Phases(3)
            .Capacitor("fly", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1)
            .Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        BottomPlateSwing swing = Of(converter);
        Assert.Equal(["fly"], swing.Undetermined);
        Assert.False(swing.Worst.IsDetermined);
        Assert.Equal(0, swing.WeightedSquare);
    }

    private static BottomPlateSwing Of(Converter converter) => BottomPlateSwing.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
}
