using ScNet.Stress;

namespace ScNet.Tests.Stress;

public sealed class VoltageStressTests
{
    private const double InputVolts = 3.6;
    private const double RatedVolts = 1.2;

    [Fact]
    public void A_voltage_at_the_rating_does_not_exceed_it()
    {
        VoltageStress stress = VoltageStress.Of([("a", [Quantity.Exact(1, 3), Quantity.Exact(-1, 3)])], InputVolts, RatedVolts);
        Assert.Equal(1.2, stress.PeakVolts);
        Assert.Empty(stress.Exceeding);
        Assert.Equal(0, stress.MaximumExcessVolts);
    }

    [Fact]
    public void An_exact_excess_counts_however_small_and_a_numeric_one_beyond_rounding()
    {
        VoltageStress stress = VoltageStress.Of(
            [
                ("exact", [Quantity.Exact(333333333333334, 1000000000000000)]),
                ("rounding", [Quantity.Numeric(1.0 / 3 * (1 + 1e-12))]),
                ("number", [Quantity.Numeric(-0.5)]),
            ],
            InputVolts, RatedVolts);
        Assert.Equal(["exact", "number"], stress.Exceeding);
        Assert.Equal(["number"], stress.PeakElements);
        Assert.Equal(0.6, stress.MaximumExcessVolts, 1e-12);
    }

    [Fact]
    public void An_undetermined_phase_is_named_and_the_determined_ones_still_count()
    {
        VoltageStress stress = VoltageStress.Of(
            [("a", [Quantity.Undetermined, Quantity.Exact(-2, 3), Quantity.Undetermined]), ("b", [Quantity.Undetermined])], InputVolts, RatedVolts);
        Assert.Equal(["a", "b"], stress.Undetermined);
        Assert.Equal(2.4, stress.PeakVolts);
        Assert.Equal(["a"], stress.Exceeding);
        Assert.Equal(1.2, stress.MaximumExcessVolts);
    }

    [Fact]
    public void Only_undetermined_voltages_have_no_highest_one()
    {
        VoltageStress stress = VoltageStress.Of([("a", [Quantity.Undetermined])], InputVolts, RatedVolts);
        Assert.Null(stress.PeakVolts);
        Assert.Empty(stress.PeakElements);
        Assert.Empty(stress.Exceeding);
    }

    [Fact]
    public void All_elements_with_the_highest_voltage_are_named()
    {
        VoltageStress stress = VoltageStress.Of(
            [("a", [Quantity.Exact(1, 4)]), ("b", [Quantity.Exact(1, 2)]), ("c", [Quantity.Exact(-1, 2)])], InputVolts, RatedVolts);
        Assert.Equal(["b", "c"], stress.PeakElements);
    }

    // 2/3 is the largest of a, wherever it stands; an exact voltage over the rating is not forgotten over a number that comes to the same
    [Fact]
    public void The_largest_voltage_of_an_element_counts_and_of_equal_ones_the_first()
    {
        Quantity over = Quantity.Exact(333333333333334, 1000000000000000);
        VoltageStress stress = VoltageStress.Of(
            [("a", [Quantity.Exact(1, 4), Quantity.Exact(-2, 3), Quantity.Exact(1, 2)]), ("b", [over, Quantity.Numeric(over.ToDouble())])], InputVolts, RatedVolts);
        Assert.Equal((2.4, 1.2), (stress.PeakVolts, stress.MaximumExcessVolts));
        Assert.Equal(["a"], stress.PeakElements);
        Assert.Equal(["a", "b"], stress.Exceeding);
    }

    [Fact]
    public void Below_the_rating_nothing_exceeds_it()
    {
        VoltageStress stress = VoltageStress.Of([("a", [Quantity.Exact(1, 4)]), ("b", [Quantity.Numeric(0.3)])], InputVolts, RatedVolts);
        Assert.Equal(0, stress.MaximumExcessVolts);
        Assert.Equal(0, VoltageStress.Of([("a", [Quantity.Exact(1, 4)])], InputVolts, RatedVolts).MaximumExcessVolts);
        Assert.Empty(stress.Exceeding);
    }

    // a billionth of a billion volts is one volt, without rounding: one more is still rounding, two are not
    [Fact]
    public void A_number_exceeds_the_rating_beyond_a_billionth_of_it()
    {
        const double rated = 1e9;
        VoltageStress stress = VoltageStress.Of([("a", [Quantity.Numeric(rated + 1)])], 1, rated);
        Assert.Empty(stress.Exceeding);
        Assert.Equal(0, stress.MaximumExcessVolts);
        Assert.Equal(2, VoltageStress.Of([("a", [Quantity.Numeric(rated + 2)])], 1, rated).MaximumExcessVolts);
    }
}
