using ScNet.Design;

namespace ScNet.Tests.Design;

public sealed class ChargeVoltageTests
{
    [Fact]
    public void An_exact_measure_stays_a_fraction()
    {
        PhaseTable charges = Tables.Of([Quantity.Exact(1, 3), Quantity.Exact(-1, 3)], 1, 2);
        ChargeVoltage measure = ChargeVoltage.Of(["a"], charges, Quantity.Exact(1, 2), [Quantity.Exact(-1, 5)], Quantity.Exact(-2));
        Assert.Equal(Quantity.Exact(1, 30), measure.Value);
    }

    [Fact]
    public void A_number_among_the_charges_makes_it_a_number()
    {
        PhaseTable charges = Tables.Of([Quantity.Numeric(0.25), Quantity.Exact(-1, 4)], 1, 2);
        ChargeVoltage measure = ChargeVoltage.Of(["a"], charges, Quantity.Exact(1), [Quantity.Exact(1)], Quantity.Exact(1, 2));
        Assert.Equal(QuantityKind.Numeric, measure.Value.Kind);
        Assert.Equal(1.0, measure.Value.ToDouble(), 1e-15);
    }

    [Fact]
    public void An_undetermined_voltage_under_charge_is_named_and_leaves_no_measure()
    {
        PhaseTable charges = Tables.Of([1, -1, 1, -1], 2, 2);
        ChargeVoltage measure = ChargeVoltage.Of(["a", "b"], charges, Quantity.Exact(1, 2), [1, Quantity.Undetermined], 1);
        Assert.False(measure.Value.IsDetermined);
        Assert.Equal(["b"], measure.Undetermined);
    }

    [Fact]
    public void An_undetermined_voltage_without_charge_counts_with_zero()
    {
        PhaseTable charges = Tables.Of([1, -1, 0, 0], 2, 2);
        ChargeVoltage measure = ChargeVoltage.Of(["a", "b"], charges, Quantity.Exact(1, 2), [1, Quantity.Undetermined], 1);
        Assert.Equal(Quantity.Exact(1), measure.Value);
        Assert.Empty(measure.Undetermined);
    }

    [Fact]
    public void A_measure_that_is_a_lower_bound_says_so()
    {
        PhaseTable charges = Tables.Of([1, -1, 1, -1], 2, 2);
        Assert.Equal("2", ChargeVoltage.Of(["a", "b"], charges, Quantity.Exact(1, 2), [1, 1], 1).ToString());
        string bound = ChargeVoltage.Of(["a", "b"], charges, Quantity.Exact(1, 2), [1, Quantity.Undetermined], 1).ToString();
        Assert.StartsWith("at least ", bound, StringComparison.Ordinal);
        Assert.EndsWith("b undetermined", bound, StringComparison.Ordinal);
    }
}
