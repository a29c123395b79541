using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

public sealed class GradedDirectionsTests
{
    [Fact]
    public void Each_direction_is_led_by_a_resistor_that_none_before_it_touches()
    {
        Random random = new(20261126);
        for (int trial = 0; trial < 200; trial++)
        {
            (DenseRows rows, double[] weights) = Draw(random);
            int[] order = GradedDirections.Of(rows, weights);
            for (int k = 0; k < order.Length; k++)
            {
                int leader = Enumerable.Range(0, weights.Length).Where(c => rows[order[k], c] != 0).MaxBy(c => weights[c]);
                Assert.All(order[..k], before => Assert.Equal(0, rows[before, leader]));
            }
        }
    }

    [Fact]
    public void What_is_made_of_directions_spans_the_same_charges()
    {
        Random random = new(20261127);
        for (int trial = 0; trial < 200; trial++)
        {
            (DenseRows rows, double[] weights) = Draw(random);
            double[][] given = [.. Enumerable.Range(0, rows.RowCount).Select(r => rows.Row(r).ToArray())];
            int[] order = GradedDirections.Of(rows, weights);

            // whatever is given is a sum of those kept: its largest resistors settle how much of each, one after the other
            foreach (double[] row in given)
            {
                double[] left = [.. row];
                foreach (int kept in order.Reverse())
                {
                    int leader = Enumerable.Range(0, weights.Length).Where(c => rows[kept, c] != 0).MaxBy(c => weights[c]);
                    DenseRows.AddMultiple(rows.Row(kept), -left[leader] / rows[kept, leader], left);
                }

                Assert.All(left, value => Assert.InRange(value, -1e-9, 1e-9));
            }
        }
    }

    [Fact]
    public void Directions_that_repeat_others_are_left_out()
    {
        DenseRows rows = new(3, 3);
        (rows[0, 0], rows[0, 1]) = (3, 1);
        (rows[1, 0], rows[1, 1]) = (1, 1.0 / 3);
        (rows[2, 1], rows[2, 2]) = (1, 5);
        Assert.Equal(2, GradedDirections.Of(rows, [1, 1e6]).Length);
    }

    [Fact]
    public void What_rides_along_is_reduced_with_the_resistors()
    {
        // the second resistor dissipates most: the row of the largest charge there leads, half of it is taken from the other
        DenseRows rows = Rows([1, 1, 20], [1, 2, 10]);
        Assert.Equal([1, 0], GradedDirections.Of(rows, [1, 10]));
        Assert.Equal([1, 2, 10], rows.Row(0).ToArray());
        Assert.Equal([0.5, 0, 15], rows.Row(1).ToArray());
    }

    [Fact]
    public void Of_equal_charges_the_first_row_leads()
    {
        DenseRows rows = Rows([2, 1], [-2, 5]);
        Assert.Equal([1, 0], GradedDirections.Of(rows, [3, 1]));
        Assert.Equal([2, 1], rows.Row(0).ToArray());
        Assert.Equal([0, 6], rows.Row(1).ToArray());
    }

    [Fact]
    public void Resistors_that_no_direction_is_left_for_are_passed_over()
    {
        DenseRows rows = Rows([0, 4, 1, 3]);
        Assert.Equal([0], GradedDirections.Of(rows, [3, 2, 1]));
        Assert.Equal([0, 4, 1, 3], rows.Row(0).ToArray());
    }

    [Theory]
    [InlineData(1e-13, 1)]
    [InlineData(1e-11, 2)]
    public void What_rounding_leaves_of_equal_charges_is_no_direction(double left, int rank)
    {
        DenseRows rows = Rows([1, 1], [1, 1 + left]);
        Assert.Equal(rank, GradedDirections.Of(rows, [10, 1]).Length);
        Assert.Equal(rank == 1, rows[1, 1] == 0);
    }

    private static DenseRows Rows(params double[][] values)
    {
        DenseRows rows = new(values.Length, values[0].Length);
        for (int r = 0; r < values.Length; r++)
        {
            values[r].CopyTo(rows.Row(r));
        }

        return rows;
    }

    // whole numbers of one digit, resistors over ten decades; the last column rides along
    private static (DenseRows Rows, double[] Weights) Draw(Random random)
    {
        DenseRows rows = new(1 + random.Next(6), 1 + random.Next(8));
        for (int r = 0; r < rows.RowCount; r++)
        {
            for (int c = 0; c < rows.ColumnCount - 1; c++)
            {
                rows[r, c] = random.Next(3) == 0 ? random.Next(-2, 3) : 0;
            }
        }

        return (rows, [.. Enumerable.Range(0, rows.ColumnCount - 1).Select(_ => Math.Pow(10, (10 * random.NextDouble()) - 5))]);
    }
}
