using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Tests.Design.Sizing;

/// <summary>The kinds and stacks of a divider by two, whose switches and capacitor all see half of the input voltage.</summary>
public sealed class ElementOptionsTests
{
    // 4, 9, 5 and 8 mF/m² at 0, 0.3, 0.6 and 1.2 V
    private static readonly CapacitorDevice s_moving = HalfTasks.Metal with
    {
        Name = "moving",
        RatedVolts = 1,
        DensityAgainstBias = [new(0, 4e-3), new(0.3, 9e-3), new(0.6, 5e-3), new(1.2, 8e-3)],
    };

    // at 3 V: 1.5 V take two of 1 V or one of 10 V
    [Fact]
    public void Every_kind_that_withstands_an_element_is_an_option_with_its_stack()
    {
        ElementOptions options = Of(Half(), HalfTasks.Process([HalfTasks.Long with { RatedVolts = 1 }, HalfTasks.Short], [HalfTasks.Metal, HalfTasks.Dense with { RatedVolts = 1 }]));
        Assert.Empty(options.Findings);
        Assert.All(options.Switches, own => Assert.Equal([("long", 2), ("short", 1)], own.Select(o => (o.Device.Name, o.Count))));
        Assert.Equal([("metal", 1), ("dense", 2)], Assert.Single(options.Capacitors).Select(o => (o.Device.Name, o.Count)));
    }

    // of a stack of two each has half of the voltage: 5 mF/m² at 1.2 V against some 7 mF/m² at 0.4 V; at all of 1.2 V it would be the other way round
    [Fact]
    public void A_capacitor_is_held_at_the_voltage_at_which_its_stack_has_least()
    {
        ElementOption<CapacitorDevice> option = Moving([1.2, 0.4]);
        Assert.Equal(2, option.Count);
        Assert.Equal(1.2, option.HeldVolts);
        Assert.Equal(5e-3, option.FaradsPerSquareMetre(), 1e-12);
    }

    [Fact]
    public void Without_a_table_or_a_known_voltage_the_nominal_density_counts()
    {
        Assert.Null(Moving(null).HeldVolts);
        Assert.Null(Moving([]).HeldVolts);
        Assert.Null(Assert.Single(Of(Half(), HalfTasks.Process([HalfTasks.Long], [HalfTasks.Metal]), [[1.2, 0.4]]).Capacitors[0]).HeldVolts);
    }

    // at most three in series: at 3 V no switch of 0.3 V, of which five would do, and none of 0.4 V, of which four would do
    [Fact]
    public void The_nearest_of_kinds_that_withstand_nothing_is_named()
    {
        SwitchDevice low = HalfTasks.Long with { Name = "low", RatedVolts = 0.3 }, high = HalfTasks.Long with { Name = "high", RatedVolts = 0.4 };
        foreach (SwitchDevice[] kinds in new[] { new[] { low, high }, [high, low] })
        {
            ElementOptions options = Of(Half(), HalfTasks.Process(kinds, [HalfTasks.Metal]));
            Assert.All(options.Switches, Assert.Empty);
            Assert.Equal(["s1", "s2", "s3", "s4"], options.Findings.Select(f => Assert.Single(f.Elements)));
            Assert.All(options.Findings, f => Assert.Equal((DiagnosticSeverity.Error, DiagnosticCodes.DeviceRatingExceeded), (f.Severity, f.Code)));
            Assert.All(options.Findings, f => Assert.Contains("1.5 V of 0.4 V, not allowed, as it needs a stack of 4", f.Message, StringComparison.Ordinal));
        }
    }

    // no mode fixes the voltage of what idles, nor of the switch that touches it
    [Fact]
    public void A_stack_that_is_a_lower_bound_is_a_warning()
    {
        Converter idle = Builder().Capacitor("idle", "x", "gnd").Switch("open", "vin", "x").Build();
        ElementOptions options = Of(idle, HalfTasks.Process([HalfTasks.Long, HalfTasks.Short], [HalfTasks.Metal]));
        Assert.Equal(["idle", "open"], options.Findings.Select(f => Assert.Single(f.Elements)));
        Assert.All(options.Findings, f => Assert.Equal((DiagnosticSeverity.Warning, DiagnosticCodes.StressUndetermined), (f.Severity, f.Code)));
        Assert.All(options.Findings, f => Assert.EndsWith("Its stack is a lower bound.", f.Message, StringComparison.Ordinal));
        Assert.All(options.Switches, own => Assert.Equal(2, own.Length));
    }

    private static ElementOption<CapacitorDevice> Moving(double[]? volts) =>
        Assert.Single(Assert.Single(Of(Half(), HalfTasks.Process([HalfTasks.Long], [s_moving]), volts is null ? null : [volts]).Capacitors));

    private static ElementOptions Of(Converter converter, Process process, double[][]? volts = null) =>
        ElementOptions.Of(ConverterStress.Of(ConverterAnalysis.Of(converter), new Interval<double>(1, 3)), process, volts);

    private static Converter Half() => Builder().Build();

    private static ConverterBuilder Builder() => Converter.Create("half").Input("vin").Output("vout").Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2);
}
