using ScNet.Design.Requirements;

namespace ScNet.Tests.Design.Requirements;

/// <summary>Each rule at its limits: what is just kept, and what is just broken, with the place of it.</summary>
public sealed class RequirementRulesTests
{
    [Fact]
    public void A_curve_has_positive_voltages_and_charges_that_fall_at_every_point()
    {
        Expect(DiagnosticCodes.ValueOutOfRange, 1, "a positive voltage of the cell, but got 0 V", RequirementRules.Discharge([new(1, 4.2), new(0, 0)], default));
        Expect(DiagnosticCodes.DischargeNotFalling, 2, "0.5 comes after 0.5", RequirementRules.Discharge([new(1, 4.2), new(0.5, 3.6), new(0.5, 3)], default));
        Assert.Null(RequirementRules.Discharge([new(1, 3.6), new(0, 3.6)], new(3.6, 3.6)));
    }

    [Fact]
    public void Output_voltages_are_positive_and_rise_at_every_one()
    {
        Expect(DiagnosticCodes.ValueOutOfRange, 0, "a positive output voltage, but got 0 V", RequirementRules.Outputs([0, 1], isRange: true));
        Expect(DiagnosticCodes.WrongValue, 1, "1 V comes after 1 V", RequirementRules.Outputs([1, 1], isRange: false));
        Assert.Null(RequirementRules.Outputs([0.8, 1], isRange: true));
    }

    [Fact]
    public void Shares_that_are_none_or_do_not_sum_to_1_are_no_fault_of_a_single_load()
    {
        Expect(DiagnosticCodes.MissingKey, -1, "at least one load", RequirementRules.Shares([]));
        Expect(DiagnosticCodes.ShareSum, -1, "sum to 0.75. Add what", RequirementRules.Shares([new("a", 1, 0.5), new("b", 1, 0.25)]));
        Expect(DiagnosticCodes.ShareSum, -1, "sum to 1.25. Make them smaller", RequirementRules.Shares([new("a", 1, 1), new("b", 1, 0.25)]));
        Assert.Null(RequirementRules.Shares([new("a", 1, 0.75), new("b", 1, 0.25)]));
    }

    [Fact]
    public void A_load_may_ask_for_any_voltage_within_a_range_but_only_for_those_that_are_listed()
    {
        LoadShare[] loads = [new("a", 1, 0.5), new("b", 1, 0.5, 0.9)];
        Assert.Null(RequirementRules.OutputsOfLoads(loads, [0.8, 1], isRange: true));
        Expect(DiagnosticCodes.OutsideRange, 1, "'b' asks for 0.9 V", RequirementRules.OutputsOfLoads(loads, [0.8, 1], isRange: false));
        Assert.Null(RequirementRules.OutputsOfLoads(loads, [0.8, 0.9], isRange: false));
    }

    [Fact]
    public void Areas_may_fill_the_total_and_pass_it_by_what_rounding_of_decimals_does()
    {
        Assert.Null(RequirementRules.Areas(1, 0.5, 0.5));
        Assert.Null(RequirementRules.Areas(1, 1 + RequirementRules.ShareTolerance, null));
        Assert.Null(RequirementRules.Areas(null, 5, 5));
        Expect(DiagnosticCodes.OutsideRange, -1, "the total, 1 m², or less, but they sum to 2 m²", RequirementRules.Areas(1, 2, null));
        Expect(DiagnosticCodes.OutsideRange, -1, "the total, 1 m², or less, but they sum to 3 m²", RequirementRules.Areas(1, null, 3));
        Expect(DiagnosticCodes.OutsideRange, -1, "the total, 1 m², or less, but they sum to 1.25 m²", RequirementRules.Areas(1, 0.5, 0.75));
    }

    private static void Expect(string code, int index, string part, RuleFault? fault)
    {
        Assert.Equal((code, index), (fault!.Value.Code, fault.Value.Index));
        Assert.Contains(part, fault.Value.Message, StringComparison.Ordinal);
    }
}
