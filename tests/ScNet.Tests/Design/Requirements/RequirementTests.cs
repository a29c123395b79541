using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Requirements;

/// <summary>Values that are none throw; values that contradict one another are told.</summary>
public sealed class RequirementTests
{
    private static readonly Interval<double> s_cell = new(2.8, 4.2), s_hertz = new(1e5, 1e8);

    private static readonly DischargePoint[] s_curve = [new(1, 4.2), new(0, 2.8)];

    private static readonly LoadShare[] s_loads = [new("a", 1e-3, 0.25, 0.8), new("b", 1e-2, 0.75)];

    private static readonly Process s_process = new() { Name = "p", Switches = [DemoDevices.NType1V8], Capacitors = [DemoDevices.Dense1V2] };

    private static Requirement Sound => new()
    {
        Name = "r",
        InputVolts = s_cell,
        Discharge = s_curve,
        OutputVolts = [0.8, 1],
        OutputIsRange = true,
        Loads = s_loads,
        LoadRangeAmperes = new(1e-3, 1e-2),
        Process = s_process,
        AreaSquareMetres = 1,
        CapacitorAreaSquareMetres = 0.8,
        FrequencyHz = s_hertz,
    };

    [Fact]
    public void What_does_not_agree_is_told_and_not_thrown()
    {
        Assert.Empty(Sound.Contradictions);
        Expect(Sound with { InputVolts = new(3, 4.2) }, DiagnosticCodes.OutsideRange, "within the input range, 3 V to 4.2 V, but got 2.8 V");
        Expect(Sound with { OutputVolts = [0.9, 1.0] }, DiagnosticCodes.OutsideRange, "'a' asks for 0.8 V");
        Expect(Sound with { OutputVolts = [0.7, 0.8, 1.0] }, DiagnosticCodes.WrongValue, "both ends");
        Expect(Sound with { OutputVolts = [0.7, 1.0], OutputIsRange = false }, DiagnosticCodes.OutsideRange, "one of the output voltages, 0.7 V, 1 V, but 'a' asks for 0.8 V");
        Expect(Sound with { LoadRangeAmperes = new(2e-3, 1e-2) }, DiagnosticCodes.OutsideRange, "'a' draws 0.001 A");
        Expect(Sound with { SwitchAreaSquareMetres = 0.3 }, DiagnosticCodes.OutsideRange, "sum to the total, 1 m²");

        static void Expect(Requirement requirement, string code, string part)
        {
            Diagnostic told = Assert.Single(requirement.Contradictions);
            Assert.Equal(code, told.Code);
            Assert.Contains(part, told.Message, StringComparison.Ordinal);
        }
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
    public void Values_that_are_none_are_refused_in_a_copy_as_well()
    {
        Assert.Throws<ArgumentException>(() => Sound with { Discharge = [new(0, 2.8), new(1, 4.2)] });
        Assert.Throws<ArgumentException>(() => Sound with { Discharge = [new(1, 4.2)] });
        Assert.Throws<ArgumentException>(() => Sound with { OutputVolts = [1, 0.8] });
        Assert.Throws<ArgumentOutOfRangeException>(() => Sound with { AreaSquareMetres = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Sound with { SourceOhms = -1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Sound with { RippleVolts = double.NaN });
        Assert.Throws<ArgumentOutOfRangeException>(() => Sound with { OutputFarads = -1e-9 });
        Assert.Throws<ArgumentException>(() => Sound with { FrequencyHz = default });
        Assert.Throws<ArgumentException>(() => Sound with { Name = string.Empty });
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

    [Fact]
    public void Requests_are_equal_by_what_they_ask_for_not_by_where_they_stand()
    {
        CandidateRequest request = new() { Families = ["ladder", "dickson"], Sizes = new(2, 4), Ratios = [new(1, 3)], AreGears = true };
        CandidateRequest elsewhere = new() { Families = ["ladder", "dickson"], Sizes = new(2, 4), Ratios = [new(1, 3)], AreGears = true, Position = new SourcePosition("a.toml", 3, 1) };
        Assert.Equal(request, elsewhere);
        Assert.Equal(request.GetHashCode(), elsewhere.GetHashCode());
        Assert.NotEqual(request, request with { Families = ["dickson", "ladder"] });
        Assert.NotEqual(request, request with { Ratios = [] });
        Assert.NotEqual(request, request with { Sizes = new(2, 3) });
        Assert.NotEqual(request, request with { AreGears = false });
        Assert.NotEqual(new CandidateRequest { File = "a.toml" }, new CandidateRequest { File = "b.toml" });
    }
}
