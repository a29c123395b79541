using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Requirements;

/// <summary>A requirement that contradicts itself throws, in whichever order it is written.</summary>
public sealed class RequirementTests
{
    private static readonly Interval<double> s_cell = new(2.8, 4.2), s_hertz = new(1e5, 1e8);

    private static readonly DischargePoint[] s_curve = [new(1, 4.2), new(0, 2.8)];

    private static readonly LoadShare[] s_loads = [new("a", 1e-3, 0.25, 0.8), new("b", 1e-2, 0.75)];

    private static readonly Process s_process = new() { Name = "p", Switches = [DemoDevices.NType1V8], Capacitors = [DemoDevices.Dense1V2] };

    [Fact]
    public void What_agrees_is_taken_in_any_order()
    {
        Requirement first = new() { Name = "r", InputVolts = s_cell, Discharge = s_curve, OutputVolts = [0.8, 1], OutputIsRange = true, Loads = s_loads, LoadRangeAmperes = new(1e-3, 1e-2), Process = s_process, FrequencyHz = s_hertz };
        Requirement last = new() { FrequencyHz = s_hertz, Process = s_process, LoadRangeAmperes = new(1e-3, 1e-2), Loads = s_loads, OutputIsRange = true, OutputVolts = [0.8, 1], Discharge = s_curve, InputVolts = s_cell, Name = "r" };
        Assert.Equal(RequirementDocuments.Describe(first), RequirementDocuments.Describe(last));
    }

    [Fact]
    public void A_curve_outside_of_the_input_range_is_refused_in_either_order()
    {
        Interval<double> narrow = new(3, 4.2);
        Assert.Throws<ArgumentException>(() => new Requirement { InputVolts = narrow, Discharge = s_curve, Name = "r", OutputVolts = [1], Loads = [new("a", 1, 1)], Process = s_process, FrequencyHz = s_hertz });
        Assert.Throws<ArgumentException>(() => new Requirement { Discharge = s_curve, InputVolts = narrow, Name = "r", OutputVolts = [1], Loads = [new("a", 1, 1)], Process = s_process, FrequencyHz = s_hertz });
    }

    [Fact]
    public void A_load_at_another_output_is_refused_in_either_order()
    {
        Assert.Throws<ArgumentException>(() => new Requirement { OutputVolts = [1.0], Loads = s_loads, Name = "r", InputVolts = s_cell, Process = s_process, FrequencyHz = s_hertz });
        Assert.Throws<ArgumentException>(() => new Requirement { Loads = s_loads, OutputVolts = [1.0], Name = "r", InputVolts = s_cell, Process = s_process, FrequencyHz = s_hertz });
        Assert.Throws<ArgumentException>(() => new Requirement { Loads = s_loads, OutputVolts = [0.9, 1.0], OutputIsRange = true, Name = "r", InputVolts = s_cell, Process = s_process, FrequencyHz = s_hertz });
    }

    [Fact]
    public void A_load_outside_of_the_range_is_refused_in_either_order()
    {
        Interval<double> narrow = new(2e-3, 1e-2);
        Assert.Throws<ArgumentException>(() => new Requirement { LoadRangeAmperes = narrow, Loads = s_loads, OutputVolts = [0.8], Name = "r", InputVolts = s_cell, Process = s_process, FrequencyHz = s_hertz });
        Assert.Throws<ArgumentException>(() => new Requirement { Loads = s_loads, LoadRangeAmperes = narrow, OutputVolts = [0.8], Name = "r", InputVolts = s_cell, Process = s_process, FrequencyHz = s_hertz });
    }

    [Fact]
    public void Areas_of_kinds_beyond_the_total_are_refused_in_either_order()
    {
        Assert.Throws<ArgumentException>(() => new Requirement { AreaSquareMetres = 1, CapacitorAreaSquareMetres = 0.8, SwitchAreaSquareMetres = 0.3, Loads = s_loads, OutputVolts = [0.8], Name = "r", InputVolts = s_cell, Process = s_process, FrequencyHz = s_hertz });
        Assert.Throws<ArgumentException>(() => new Requirement { CapacitorAreaSquareMetres = 0.8, SwitchAreaSquareMetres = 0.3, AreaSquareMetres = 1, Loads = s_loads, OutputVolts = [0.8], Name = "r", InputVolts = s_cell, Process = s_process, FrequencyHz = s_hertz });
        Assert.Throws<ArgumentOutOfRangeException>(() => new Requirement { AreaSquareMetres = 0, Loads = s_loads, OutputVolts = [0.8], Name = "r", InputVolts = s_cell, Process = s_process, FrequencyHz = s_hertz });
    }

    [Fact]
    public void Ranges_that_are_none_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new Requirement { InputVolts = default, Name = "r", Loads = s_loads, OutputVolts = [0.8], Process = s_process, FrequencyHz = s_hertz });
        Assert.Throws<ArgumentOutOfRangeException>(() => new Requirement { InputVolts = new(0, 1), Name = "r", Loads = s_loads, OutputVolts = [0.8], Process = s_process, FrequencyHz = s_hertz });
        Assert.Throws<ArgumentException>(() => new Requirement { InputVolts = s_cell, Name = "r", Loads = s_loads, OutputVolts = [], Process = s_process, FrequencyHz = s_hertz });
        Assert.Throws<ArgumentException>(() => new Requirement { InputVolts = s_cell, Name = "r", Loads = [new("a", 1, 0.5)], OutputVolts = [0.8], Process = s_process, FrequencyHz = s_hertz });
        Assert.Throws<ArgumentException>(() => new Requirement { InputVolts = s_cell, Name = "r", Loads = [], OutputVolts = [0.8], Process = s_process, FrequencyHz = s_hertz });
    }

    [Fact]
    public void Loads_and_candidates_check_themselves()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new LoadShare("a", 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LoadShare("a", 1, 1.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LoadShare("a", 1, 1, -1));
        Assert.Throws<ArgumentException>(() => new LoadShare("", 1, 1));
        Assert.Throws<ArgumentException>(() => new CandidateRequest { File = "a", Families = ["b"] });
        Assert.Throws<ArgumentException>(() => new CandidateRequest { Families = ["b"], File = "a" });
        Assert.Throws<ArgumentException>(() => new CandidateRequest { Families = [""] });
        Assert.Throws<ArgumentOutOfRangeException>(() => new CandidateRequest { Families = ["b"], Sizes = new(0, 2) });
    }
}
