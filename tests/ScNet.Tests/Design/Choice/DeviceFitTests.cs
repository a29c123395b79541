using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Devices;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

public sealed class DeviceFitTests
{
    // of a series-parallel converter series1, top1 and bottom1 block 1 - 1/n of the input, of 4.2 V 2.8 V for n = 3
    // (Seeman and Sanders 2008, from memory); 1.8 V devices take two in series, and two take four times the area
    [Fact]
    public void What_takes_a_stack_of_every_kind_says_so_with_its_area()
    {
        DeviceFit fit = Of(SeriesParallel.StepDown(3));
        Assert.Empty(fit.Rejections);
        Assert.Equal(["series1, top1, bottom1 each need 2.8 V: demo n 1.8 V stands 1.8 V, 2 in series: area × 4"], fit.Stacks);
    }

    [Fact]
    public void What_no_kind_withstands_in_the_series_that_are_allowed_rejects_the_candidate()
    {
        DeviceFit fit = Of(SeriesParallel.StepDown(3), switchesInSeries: 1);
        Assert.Equal(["series1, top1, bottom1 each need 2.8 V: demo n 1.8 V stands 1.8 V, 1 is allowed in series"], fit.Rejections);
        Assert.Empty(Of(Ladder.StepDown(3), switchesInSeries: 1).Rejections);
    }

    // fly k of a Dickson converter holds k/n: fly2 2.8 V of 4.2 V
    [Fact]
    public void Capacitors_are_rejected_likewise()
    {
        Process process = Process(3, capacitorsInSeries: 1, [DemoDevices.Dense1V2]);
        Assert.Equal(
            ["fly1 needs 1.4 V: demo dense 1.2 V stands 1.2 V, 1 is allowed in series", "fly2 needs 2.8 V: demo dense 1.2 V stands 1.2 V, 1 is allowed in series"],
            DeviceFit.Of(ConverterAnalysis.Of(Dickson.StepDown(3)), CoreRequirement.Of(process)).Rejections);
    }

    // as many kinds as there are of the sort that has more, each in its order
    [Fact]
    public void Every_element_is_held_against_every_kind_of_its_sort()
    {
        Process process = Process(3, 2, [DemoDevices.Plate3V6]);
        DeviceFit fit = DeviceFit.Of(ConverterAnalysis.Of(SeriesParallel.StepDown(2)), CoreRequirement.Of(process));
        Assert.Equal(["demo n 1.2 V", "demo n 1.8 V"], fit.Elements[0].Kinds.Select(k => k.Device));
        Assert.Equal(["demo plate 3.6 V"], fit.Elements[^1].Kinds.Select(k => k.Device));
        Process other = process with { Switches = [DemoDevices.NType1V8], Capacitors = [DemoDevices.Dense1V2, DemoDevices.Plate3V6] };
        DeviceFit swapped = DeviceFit.Of(ConverterAnalysis.Of(SeriesParallel.StepDown(2)), CoreRequirement.Of(other));
        Assert.Equal(["demo n 1.8 V"], swapped.Elements[0].Kinds.Select(k => k.Device));
        Assert.Equal(["demo dense 1.2 V", "demo plate 3.6 V"], swapped.Elements[^1].Kinds.Select(k => k.Device));
    }

    // a switch and a capacitor in series that nothing else is joined to share the input in a way that no law tells
    [Fact]
    public void What_no_law_bounds_needs_a_rating_for_any_voltage()
    {
        Converter idle = Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n").Capacitor("idle", "x", "gnd").Switch("open", "vin", "x")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        string[] rejections = [.. Of(idle).Rejections];
        Assert.NotEmpty(rejections);
        Assert.All(rejections, r => Assert.Contains("a rating for any voltage, which nothing bounds: ", r, StringComparison.Ordinal));
        Assert.All(rejections, r => Assert.False(r.EndsWith(": ", StringComparison.Ordinal), r));
        Assert.All(rejections, r => Assert.True(r.Contains("open", StringComparison.Ordinal) || r.Contains("idle", StringComparison.Ordinal), r));
    }

    private static DeviceFit Of(Converter converter, int switchesInSeries = 3) =>
        DeviceFit.Of(ConverterAnalysis.Of(converter), CoreRequirement.Of(Process(switchesInSeries, 2, CoreRequirement.Process.Capacitors)));

    private static Process Process(int switchesInSeries, int capacitorsInSeries, IReadOnlyList<CapacitorDevice> capacitors) => new()
    {
        Name = "invented",
        Switches = CoreRequirement.Process.Switches,
        Capacitors = capacitors,
        MaximumSwitchesInSeries = switchesInSeries,
        MaximumCapacitorsInSeries = capacitorsInSeries,
    };
}
