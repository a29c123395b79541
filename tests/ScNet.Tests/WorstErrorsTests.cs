using CsCheck;

namespace ScNet.Tests;

/// <summary>What campaigns report is itself held to fail, to count and to name the worst case.</summary>
[Trait("Kind", "LawCheck")]
public sealed class WorstErrorsTests
{
    private readonly WorstErrors _errors = new();

    [Theory]
    [InlineData(2, 2.03, 2)]
    [InlineData(2, 1.97, -2)]
    [InlineData(2, double.NaN, 2)]
    [InlineData(2, double.PositiveInfinity, 2)]
    [InlineData(double.NaN, double.NaN, 2)]
    [InlineData(0, 1e-300, 0)]
    public void A_figure_that_is_too_far_off_is_told_apart(double expected, double actual, double scale)
    {
        string message = Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => _errors.Require("length", expected, actual, scale, 0.01, "of a rod")).Message;
        Assert.Contains("length of a rod", message, StringComparison.Ordinal);
        WorstErrors.Row row = Assert.Single(_errors.Rows());
        Assert.True(row.Worst > row.Tolerance);
    }

    [Theory]
    [InlineData(2, 2.01, 2)]
    [InlineData(0, 0, 0)]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity, 1)]
    public void A_figure_that_is_near_enough_is_noted(double expected, double actual, double scale)
    {
        _errors.Require("length", expected, actual, scale, 0.01);
        Assert.InRange(Assert.Single(_errors.Rows()).Worst, 0, 0.01);
    }

    [Fact]
    public void The_worst_case_is_named_so_that_it_can_be_drawn_again()
    {
        int largest = 0;
        Gen.Int[0, 1000].Holds(n =>
        {
            largest = Math.Max(n, largest);
            _errors.Require("number", 0, n, 1e6, 1);
            _errors.Require("number", 0, 0, 1e6, 1);
        });
        WorstErrors.Row row = Assert.Single(_errors.Rows());
        Assert.Equal((LawCheck.Total(100), 2 * LawCheck.Total(100)), (row.Cases, row.Figures));
        Assert.Equal(largest / 1e6, row.Worst);
        Assert.Equal($"{nameof(WorstErrorsTests)}.{nameof(The_worst_case_is_named_so_that_it_can_be_drawn_again)}", row.Law);
        Assert.Equal(largest, Gen.Int[0, 1000].Generate(PCG.Parse(row.Case), null, out _));
    }

    [Fact]
    public void Quantities_and_laws_have_rows_of_their_own()
    {
        Gen.Const(1).Holds(_ => _errors.Note("b", 0.1, 1), 1, name: "second");
        Gen.Const(1).Holds(_ => _errors.Note("b", 0.3, 2), 1, name: "first");
        Gen.Const(1).Holds(_ => _errors.Note("a", double.NaN, 1), 1, name: "first");
        Assert.Equal(
            [("a", "WorstErrorsTests.first", double.PositiveInfinity, 1), ("b", "WorstErrorsTests.first", 0.3, 2), ("b", "WorstErrorsTests.second", 0.1, 1.0)],
            _errors.Rows().Select(r => (r.Quantity, r.Law, r.Worst, r.Tolerance)));
    }

    [Fact]
    public void Nothing_is_lost_between_threads()
    {
        Parallel.For(0, 8_000, k => _errors.Note("number", k, 1));
        WorstErrors.Row row = Assert.Single(_errors.Rows());
        Assert.Equal((8_000, 7_999), (row.Figures, row.Worst));
    }

    [Fact]
    public void A_line_of_the_report_has_every_member() => Assert.Equal(
        "error\tlength\tRods.Are_long\t3\t7\t1.2e-12\t1.0e-10\tabc", LawReport.Line(new WorstErrors.Row("length", "Rods.Are_long", 3, 7, 1.2e-12, 1e-10, "abc")));
}
