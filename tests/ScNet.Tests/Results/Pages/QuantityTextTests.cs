using ScNet.Results.Pages;

namespace ScNet.Tests.Results.Pages;

public sealed class QuantityTextTests
{
    public static TheoryData<Quantity, string, string, string> Quantities => new()
    {
        { Quantity.Exact(1, 3), "1/3 (0.3333)", "1/3 (0.3333)", "0.3333" },
        { Quantity.Exact(-2), "-2", "-2", "-2" },
        { Quantity.Exact(12345, 67891), "12345/67891 (0.1818)", "0.1818", "0.1818" },
        { Quantity.Numeric(0.123456789), "0.123457", "0.1235", "0.1235" },
        { Quantity.Undetermined, "?", "?", "?" },
    };

    [Theory]
    [MemberData(nameof(Quantities))]
    public void A_quantity_is_written_in_three_lengths(Quantity quantity, string full, string brief, string number)
    {
        using CultureScope scope = new("de-DE");
        Assert.Equal((full, brief, number), (QuantityText.WithDecimal(quantity), QuantityText.Short(quantity), QuantityText.Decimal(quantity)));
    }
}
