using Fractions;
using ScNet.Analysis;

namespace ScNet.Tests.Topologies;

/// <summary>
/// Published closed forms against the analysis, as equalities of fractions. Source of the forms, from
/// memory: M. D. Seeman and S. R. Sanders, "Analysis and optimization of switched-capacitor DC-DC
/// converters", IEEE Trans. Power Electronics 23(2), 2008; M. D. Seeman, "A design methodology for
/// switched-capacitor DC-DC converters", PhD thesis, UC Berkeley, 2009. docs/theory/families.md derives them.
/// </summary>
public abstract class FamilyTests
{
    private const double Farads = 2e-9;
    private const double Ohms = 3;

    public static TheoryData<int, bool> Cases
    {
        get
        {
            TheoryData<int, bool> cases = [];
            foreach (int size in Enumerable.Range(1, 12).Append(20))
            {
                cases.Add(size, false);
                cases.Add(size, true);
            }

            return cases;
        }
    }

    /// <summary>The member of the family with the given number of stages, or of levels above the first.</summary>
    internal abstract FamilyFacts Facts(int size, double farads, double ohms);

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_ratio_is_the_published_one_and_topology_decides_the_flow(int size, bool up)
    {
        FamilyFacts facts = Facts(size, Farads, Ohms);
        ModeAnalysis analysis = Analyse(facts.Converter(up));
        AssertEqual(up ? facts.N : 1 / facts.N, analysis.Ratio, "ratio");
        Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
        Assert.Empty(analysis.Diagnostics);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_elements_are_the_documented_ones(int size, bool up)
    {
        FamilyFacts facts = Facts(size, Farads, Ohms);
        Converter converter = facts.Converter(up);
        Assert.Equal(facts.Capacitors.Keys.Order(), converter.Capacitors.Select(c => c.Name).Order());
        Assert.Equal(facts.Switches.Keys.Order(), converter.Switches.Select(s => s.Name).Order());
        Assert.All(converter.Capacitors, c => Assert.Equal(Farads, c.Farads));
        Assert.All(converter.Switches, s => Assert.Equal(Ohms, s.Ohms));
        Assert.Empty(converter.Warnings);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_capacitor_has_its_charge_multiplier_voltage_and_coefficient(int size, bool up)
    {
        FamilyFacts facts = Facts(size, Farads, Ohms);
        Converter converter = facts.Converter(up);
        ModeAnalysis analysis = Analyse(converter);
        (Fraction charge, Fraction voltage, _) = facts.Scale(up);
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            string name = converter.Capacitors[c].Name;
            (Fraction expectedCharge, Fraction expectedVoltage) = facts.Capacitors[name];
            expectedCharge *= charge;
            AssertEqual(expectedCharge, analysis.ChargeFlow.Capacitors[c][1], $"{name}, phase 1");
            AssertEqual(-expectedCharge, analysis.ChargeFlow.Capacitors[c][2], $"{name}, phase 2");
            AssertEqual(expectedCharge * expectedCharge, analysis.SlowSwitchingLimit.Coefficients[c], $"{name}, coefficient");
            AssertEqual(expectedVoltage * voltage, analysis.IdealPoint.CapacitorVoltages[c], $"{name}, voltage");
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_switch_has_its_charge_multiplier_blocking_voltage_and_coefficient(int size, bool up)
    {
        FamilyFacts facts = Facts(size, Farads, Ohms);
        Converter converter = facts.Converter(up);
        ModeAnalysis analysis = Analyse(converter);
        (Fraction charge, Fraction voltage, _) = facts.Scale(up);
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            string name = converter.Switches[s].Name;
            (int closed, Fraction expectedCharge, Fraction blocked) = facts.Switches[name];
            int open = 3 - closed;
            expectedCharge *= charge;
            AssertEqual(expectedCharge, analysis.ChargeFlow.Switches[s][closed], $"{name}, closed");
            AssertEqual(0, analysis.ChargeFlow.Switches[s][open], $"{name}, open");
            AssertEqual(2 * expectedCharge * expectedCharge, analysis.FastSwitchingLimit.SwitchCoefficients[s], $"{name}, coefficient");
            AssertEqual(0, analysis.BlockingVoltages.Switches[s][closed], $"{name}, voltage when closed");
            AssertEqual(blocked * voltage, analysis.BlockingVoltages.Switches[s][open], $"{name}, voltage when open");
            AssertEqual(blocked * voltage, analysis.BlockingVoltages.Peaks[s], $"{name}, peak");
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Both_ports_carry_the_published_charge_in_each_phase(int size, bool up)
    {
        FamilyFacts facts = Facts(size, Farads, Ohms);
        ChargeFlow flow = Analyse(facts.Converter(up)).ChargeFlow;
        Fraction magnitude = facts.PortScale(up);
        (PhaseValues high, PhaseValues low) = up ? (flow.Output, flow.Input) : (flow.Input, flow.Output);
        AssertEqual(facts.High.First * magnitude, high[1], "high, phase 1");
        AssertEqual(facts.High.Second * magnitude, high[2], "high, phase 2");
        AssertEqual(facts.Low.First * magnitude, low[1], "low, phase 1");
        AssertEqual(facts.Low.Second * magnitude, low[2], "low, phase 2");
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Both_limits_have_their_published_sums(int size, bool up)
    {
        FamilyFacts facts = Facts(size, Farads, Ohms);
        ModeAnalysis analysis = Analyse(facts.Converter(up));
        Fraction limit = facts.Scale(up).Limit;
        AssertEqual(facts.SlowLimit * limit, Sum(analysis.SlowSwitchingLimit.Coefficients), "slow");
        AssertEqual(facts.FastLimit * limit, Sum(analysis.FastSwitchingLimit.SwitchCoefficients), "fast");
        AssertClose((facts.SlowLimit * limit).ToDouble() / Farads, analysis.SlowSwitchingLimit.OhmsAtOneHertz);
        AssertClose((facts.SlowLimit * limit).ToDouble() / Farads / 1e6, analysis.SlowSwitchingLimit.Ohms(1e6));
        AssertClose((facts.FastLimit * limit).ToDouble() * Ohms, analysis.FastSwitchingLimit.Ohms);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void With_a_current_load_the_output_capacitor_takes_what_the_load_does_not(int size, bool up)
    {
        FamilyFacts facts = Facts(size, Farads, Ohms);
        Converter converter = up ? facts.StepUpWithCurrentLoad : facts.StepDownWithCurrentLoad;
        Assert.Equal(LoadKind.Current, converter.Load);
        ModeAnalysis analysis = Analyse(converter);
        (Fraction charge, Fraction voltage, _) = facts.Scale(up);
        AssertEqual(up ? facts.N : 1 / facts.N, analysis.Ratio, "ratio");
        Fraction delivered = (up ? facts.High.First : facts.Low.First) * facts.PortScale(up);
        int last = converter.Capacitors.Count - 1;
        Assert.Equal("out", converter.Capacitors[last].Name);
        AssertEqual(delivered - new Fraction(1, 2), analysis.ChargeFlow.Capacitors[last][1], "out");
        AssertEqual(up ? facts.N : 1 / facts.N, analysis.IdealPoint.CapacitorVoltages[last], "voltage of out");
        for (int c = 0; c < last; c++)
        {
            (Fraction expectedCharge, Fraction expectedVoltage) = facts.Capacitors[converter.Capacitors[c].Name];
            AssertEqual(expectedCharge * charge, analysis.ChargeFlow.Capacitors[c][1], converter.Capacitors[c].Name);
            AssertEqual(expectedVoltage * voltage, analysis.IdealPoint.CapacitorVoltages[c], converter.Capacitors[c].Name);
        }
    }

    internal static ModeAnalysis Analyse(Converter converter) => ModeAnalysis.Of(converter, converter.Modes[0]);

    private static Fraction Sum(IEnumerable<Quantity> values) =>
        values.Aggregate(Fraction.Zero, (sum, value) => sum + value.ToFraction());

    private static void AssertEqual(Fraction expected, Quantity actual, string what) =>
        Assert.True(Quantity.Exact(expected) == actual, $"{what}: expected {Quantity.Exact(expected)}, but got {actual}.");

    private static void AssertClose(double expected, double actual) =>
        Assert.InRange(Math.Abs(actual - expected) / Math.Abs(expected), 0, 1e-13);
}
