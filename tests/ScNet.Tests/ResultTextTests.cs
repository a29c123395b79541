using System.Reflection;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Devices;
using ScNet.Netlists;
using ScNet.Reconfiguration;
using ScNet.Results;
using ScNet.SteadyState;

namespace ScNet.Tests;

/// <summary>What a result shows in a debugger, a log or the last line of a notebook cell.</summary>
public sealed class ResultTextTests
{
    private static readonly ModeAnalysis s_half = Analysis(1e-9, 2);

    public static TheoryData<object, string> Texts => new()
    {
        { new OperatingPoint(3.6, -0.02, 2.5e7), "3.6 V input, -0.02 A load, 2.5E+07 Hz" },
        { OutputImpedance.Of(s_half), "Half, mode default: SSL 2.5E+08 Ω at 1 Hz, FSL 4 Ω, equal at 6.25E+07 Hz" },
        { OutputImpedance.Of(s_half).At(1e8), "4.50776 Ω at 1E+08 Hz: SSL 2.5 Ω, FSL 4 Ω" },
        {
            PeriodicSteadyState.Of(s_half, new OperatingPoint(3.6, 0.02, 2e7)),
            "Half, mode default, 3.6 V input, 0.02 A load, 2E+07 Hz: 1.54903 V output, 0.036 W in, 0.0309807 W out"
        },
        {
            PeriodicSteadyState.Of(s_half, new OperatingPoint(3.6, 0.02, 2e7)).Switches[0],
            "s1: 0.0250483 A RMS, 0.125242 A peak, 0.00125484 W, blocks 1.80048 V to 2.05048 V"
        },
        {
            PeriodicSteadyState.Of(s_half, new OperatingPoint(3.6, 0.02, 2e7)).Capacitors[0],
            "fly: 1.8 V average, 0.5 V ripple, 0.0354237 A RMS, 0.125242 A peak, 0 W"
        },
        { new ComponentTolerances(0.125, 0.2), "capacitance ±12.5 %, on-resistance ±20 %, ESR ±0 %" },
        { new ComparisonConditions(3.6, 1.2), "3.6 V input, 1.2 V rating, 1E-06 F of capacitance, 1 S of switch conductance, 1E+06 Hz" },
        {
            ModeComparison.Of(s_half, new ComparisonConditions(3.6, 1.5)),
            "Half, mode default: ratio 1/2, 1.8 V; SSL 0.25 Ω in own proportions, 0.25 Ω by the best split; FSL 8 Ω in own proportions, 8 Ω by the best split"
        },
        {
            ModeComparison.Of(s_half, new ComparisonConditions(3.6, 1.5)).SwitchStress,
            "1.8 V at s1, s2, s3, s4; s1, s2, s3, s4 over the rating by up to 0.3 V"
        },
        { ModeComparison.Of(s_half, new ComparisonConditions(3.6, 1.8)).CapacitorStress, "1.8 V at fly" },
        { ModeComparison.Of(s_half, new ComparisonConditions(3.6, 1.8)).CapacitorChargeVoltage, "1/2" },
        { BottomPlateSwing.Of(s_half), "1/2 per volt of input at fly" },
        { new StackedSwitch(DemoDevices.NType1V8, 2, 1.5), $"2 × {DemoDevices.NType1V8}, 1.5 Ω" },
        { new StackedCapacitor(DemoDevices.Dense1V2, 2, 1e-9), $"2 × {DemoDevices.Dense1V2}, 1E-09 F" },
        {
            new RatingLimits { Switch = DemoDevices.NType1V8, Capacitor = DemoDevices.Dense1V2 },
            $"switches {DemoDevices.NType1V8}, at most 3 in series; capacitors {DemoDevices.Dense1V2}, at most 2 in series"
        },
        { ReachableRatios.Of(s_half.Converter), "2 ratios by 256 patterns: 1/2, 1" },
        { NetlistReader.Read(Netlists.Documents.Half), "Half: 1 capacitor, 4 switches, 2 phases, 1 mode" },
        {
            NetlistReader.Read("name = \"A\"\ninput = \"a\"\ninput = \"b\"\noutput = 5\nswitches = {}\n", "a.toml"),
            "a.toml(1,1): error missing-key: The converter has no capacitors and no switches. Add them.\n"
            + "a.toml(3,1): error syntax: 'input' is written twice (first at line 2, column 1). Join the two, or leave one out.\n"
            + "a.toml(4,10): error wrong-value: Expected a string for 'output', but got the number 5."
        },
    };

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_result_shows_its_figures_with_units_in_every_culture(object result, string expected)
    {
        foreach (string culture in (string[])["", "de-DE", "fa-IR"])
        {
            using CultureScope scope = new(culture);
            Assert.Equal(expected, result.ToString());
        }
    }

    [Fact]
    public void What_is_undetermined_or_missing_shows_as_such()
    {
        Converter converter = Converter.Create("Loose")
            .Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("idle", "n", "x")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Switch("s5", "x", "y", on: 1)
            .Build();
        ModeComparison comparison = ModeComparison.Of(ModeAnalysis.Of(converter, converter.Modes[0]), new ComparisonConditions(2, 2));

        Assert.Equal("1 V at fly; idle undetermined", comparison.CapacitorStress.ToString());
        Assert.Equal("1/2 per volt of input at fly; idle undetermined", comparison.BottomPlateSwing.ToString());
    }

    [Fact]
    public void Every_public_result_type_says_something_of_its_own()
    {
        Type[] silent = [.. typeof(Converter).Assembly.GetExportedTypes()
            .Where(t => t is { IsEnum: false, IsInterface: false } && !(t.IsAbstract && t.IsSealed))
            .Where(t => !typeof(Exception).IsAssignableFrom(t) && !typeof(Delegate).IsAssignableFrom(t))
            .Where(t => t.GetMethod(nameof(ToString), BindingFlags.Public | BindingFlags.Instance, Type.EmptyTypes)!.DeclaringType is { } owner
                && (owner == typeof(object) || owner == typeof(ValueType)))];

        // A builder is no result; a document is written with ToJson.
        Assert.Equal([typeof(AnalysisDocument), typeof(ConverterBuilder)], silent.OrderBy(t => t.Name, StringComparer.Ordinal));
    }

    private static ModeAnalysis Analysis(double farads, double ohms)
    {
        Converter half = Converter.Create("Half")
            .Input("vin").Output("vout")
            .Capacitor("fly", "p", "n", farads)
            .Switch("s1", "vin", "p", on: 1, ohms).Switch("s2", "n", "vout", on: 1, ohms)
            .Switch("s3", "p", "vout", on: 2, ohms).Switch("s4", "n", "gnd", on: 2, ohms)
            .Build();
        return ModeAnalysis.Of(half, half.Modes[0]);
    }
}
