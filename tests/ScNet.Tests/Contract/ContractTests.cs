using System.Reflection;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Devices;
using ScNet.Netlists;
using ScNet.Reconfiguration;
using ScNet.SteadyState;
using ScNet.Stress;
using ScNet.Tests.Stress;

namespace ScNet.Tests.Contract;

/// <summary>What the whole public face keeps to.</summary>
public sealed class ContractTests
{
    private static readonly Assembly s_library = typeof(Converter).Assembly;

    [Fact]
    public void No_property_of_a_result_throws_hands_out_a_list_that_can_be_changed_or_gives_no_number()
    {
        IReadOnlyCollection<string> faults = ObjectWalk.From([s_library], Results()).Faults;
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    [Fact]
    public void The_walk_comes_by_the_results_of_every_room() => Assert.Subset(
        ObjectWalk.From([s_library], Results()).Types.ToHashSet(),
        new HashSet<Type>
        {
            typeof(Capacitor), typeof(Switch), typeof(Phase), typeof(Mode), typeof(Diagnostic), typeof(Quantity), typeof(PhaseSet), typeof(PhaseValues),
            typeof(ModeAnalysis), typeof(ChargeFlow), typeof(IdealPoint), typeof(CapacitorAnalysis), typeof(SwitchAnalysis),
            typeof(PhaseGraph), typeof(PhaseEdge), typeof(PhaseGroup), typeof(ConverterStress), typeof(ModeChange), typeof(ConverterRatings),
            typeof(PeriodicSteadyState), typeof(SwitchOperation), typeof(CapacitorOperation), typeof(ImpedanceSensitivity), typeof(ImpedanceDistribution),
            typeof(ReachableRatio), typeof(GatePattern), typeof(ModeComparison), typeof(NetlistReading),
        });

    [Fact]
    public void No_public_property_or_field_is_of_a_type_that_can_be_changed()
    {
        const BindingFlags Public = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        Assert.Empty(s_library.GetExportedTypes().Where(t => !t.IsEnum).SelectMany(t => t.GetProperties(Public)
            .Where(p => IsChangeable(p.PropertyType)).Select(p => $"{t.Name}.{p.Name}")
            .Concat(t.GetFields(Public).Where(f => IsChangeable(f.FieldType) || !(f.IsInitOnly || f.IsLiteral)).Select(f => $"{t.Name}.{f.Name}"))));
    }

    [Fact]
    public void No_enumeration_called_Kind_stands_beside_another_type_called_Kind_of_the_same_thing()
    {
        string[] enums = [.. s_library.GetExportedTypes().Where(t => t.IsEnum && t.Name.EndsWith("Kind", StringComparison.Ordinal)).Select(t => t.Namespace!)];
        Assert.Empty(s_library.GetExportedTypes()
            .Where(t => !t.IsEnum && t.Name.EndsWith("Kind", StringComparison.Ordinal) && enums.Contains(t.Namespace)).Select(t => t.Name));
    }

    private static bool IsChangeable(Type type) => type.IsArray || (type.IsGenericType
        && type.GetGenericTypeDefinition() is { } open
        && (open == typeof(List<>) || open == typeof(Dictionary<,>) || open == typeof(HashSet<>) || open == typeof(IList<>) || open == typeof(ICollection<>) || open == typeof(IDictionary<,>)));

    // Sound and failed modes, floating nodes, value-decided flow, a netlist with mistakes: every room has something to say.
    private static object[] Results()
    {
        Converter half = RatedNetworks.Half().Build();
        Converter gears = RatedNetworks.Example("memory-gears");
        Converter loose = RatedNetworks.Half().Capacitor("idle", "n", "x").Capacitor("more", "p", "n").Switch("s9", "x", "y", on: 1).Build();
        Converter shorted = RatedNetworks.Half().Switch("s9", "vin", "gnd", on: 1).Build();
        ModeAnalysis sound = ModeAnalysis.Of(half), floating = ModeAnalysis.Of(loose);
        OperatingPoint point = new(3.6, 0.02, 2e7);
        ComparisonConditions conditions = new(3.6, 1.2);
        RatingLimits limits = new() { Switch = DemoDevices.NType1V8, Capacitor = DemoDevices.Dense1V2 };
        List<object> results =
        [
            sound, floating, ConverterAnalysis.Of(gears), ConverterAnalysis.Of(shorted),
            NetlistReader.Read("name = \"A\"\ninput = \"a\"\noutput = 5\nswitches = {}\n", "a.toml"),
            ReachableRatios.Of(half), ImpedanceTolerance.MonteCarlo(sound, 1e6, new ComponentTolerances(0.1, 0.1), 5, seed: 1),
        ];
        foreach (ModeAnalysis analysis in (ModeAnalysis[])[sound, floating])
        {
            results.AddRange([
                OutputImpedance.Of(analysis), OutputImpedance.Of(analysis).At(1e6), PeriodicSteadyState.Of(analysis, point),
                ImpedanceSensitivity.Of(analysis, 1e6), ModeComparison.Of(analysis, conditions), PhaseGraph.Of(analysis.Converter, analysis.Mode, 1),
            ]);
        }

        foreach (Converter converter in (Converter[])[half, loose, gears])
        {
            ConverterStress stress = RatedNetworks.Stress(converter, new Interval<double>(2.8, 4.2));
            ConverterRatings ratings = ConverterRatings.Of(stress, limits);
            results.AddRange([stress, ratings, ConverterGateDrive.Of(ratings)]);
        }

        return [.. results];
    }
}
