using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

/// <summary>Which of the next pivots is offered: one of few entries in its row and column, and a unit where that decides nothing.</summary>
public class PivotQueueTests
{
    [Theory]
    [InlineData("2 1; 1 1", 1)]
    [InlineData("2 1; -1 1", 1)]
    [InlineData("-1 1; 2 1", 0)]
    [InlineData("2 1; 3 1; 1 1", 2)]
    public void Of_rows_of_one_length_a_unit_is_taken(string rows, int expected) => Assert.Equal((expected, 0), Choose(Queue(rows, 1)));

    [Theory]
    [InlineData("2 1 0; 1 1 1", 0)]
    [InlineData("1 1 1; 2 0 1", 1)]
    [InlineData("1 1 1 1; 1 0 1 1; 3 1 0 0", 2)]
    public void A_short_row_comes_before_a_unit(string rows, int expected) => Assert.Equal((expected, 0), Choose(Queue(rows, 1)));

    // the shortest column costs 1 · 2 fills; the row of one entry fills nothing, though its column is longer
    [Fact]
    public void A_shortest_row_is_taken_where_it_fills_less_than_a_shortest_column()
    {
        PivotQueue<long> queue = Queue("1 1 1 0; 1 1 1 0; 0 0 0 1; 0 1 1 1; 0 1 1 1", 4);
        Assert.Equal((2, 3), Choose(queue));
        Assert.Equal((2, 3), Choose(queue));
    }

    // the row of two entries fills 3 · 1, the shortest column 1 · 2
    [Fact]
    public void A_shortest_column_is_taken_where_it_fills_less() =>
        Assert.Equal(0, Choose(Queue("1 1 1 0 0; 1 1 1 0 0; 0 0 0 1 1; 0 1 1 1 1; 0 1 1 1 1; 0 1 1 1 1", 5)).Column);

    // both entries of the short row fill less than the shortest column, the second one least
    [Fact]
    public void Of_a_shortest_row_the_column_that_fills_least_is_taken() => Assert.Equal(
        (2, 4), Choose(Queue("1 1 1 1 0 1; 1 1 1 1 0 1; 0 0 0 1 1 0; 0 1 1 0 1 1; 0 1 1 1 1 1; 0 1 1 0 0 1", 6)));

    // columns of a later stage, and rows that are done, are not offered
    [Fact]
    public void Only_the_columns_of_a_stage_are_offered()
    {
        SparseRows<long> rows = Rows("0 1 1; 1 1 0");
        PivotQueue<long> queue = new();
        queue.Reset(rows, 3);
        Assert.False(queue.TryChoose(out _, out _));
        queue.Begin(2, 3, [false, false]);
        Assert.Equal((0, 2), Choose(queue));
        queue.Retire(0, 2);
        Assert.False(queue.TryChoose(out _, out _));
        queue.Begin(0, 2, [true, false]);
        Assert.Equal(1, Choose(queue).Row);
    }

    // a row that has lost its last entry is offered no more, and again when it has one
    [Fact]
    public void A_row_is_filed_by_what_is_left_of_it()
    {
        SparseRows<long> rows = Rows("1 1 1 0; 1 1 1 0; 0 0 0 1; 0 1 1 1; 0 1 1 1");
        PivotQueue<long> queue = new();
        queue.Reset(rows, 4);
        queue.Begin(0, 4, new bool[5]);
        Assert.Equal((2, 3), Choose(queue));
        rows.RemoveAt(2, 0);
        queue.NoteRemoved(2, 3);
        queue.FileRow(2);
        Assert.NotEqual(2, Choose(queue).Row);
        rows.Append(2, 1, 5);
        queue.NoteAdded(2, 1);
        queue.FileRow(2);
        Assert.Equal((2, 1), Choose(queue));
    }

    internal static SparseRows<long> Rows(string text)
    {
        SparseRows<long> rows = new(0, 0);
        foreach (string line in text.Split(';'))
        {
            int row = rows.AddRow();
            foreach ((int column, string value) in line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Index().Where(v => v.Item != "0"))
            {
                rows.Append(row, column, long.Parse(value, System.Globalization.CultureInfo.InvariantCulture));
            }
        }

        return rows;
    }

    private static PivotQueue<long> Queue(string text, int pivotColumns)
    {
        SparseRows<long> rows = Rows(text);
        PivotQueue<long> queue = new();
        queue.Reset(rows, pivotColumns);
        queue.Begin(0, pivotColumns, new bool[rows.Count]);
        return queue;
    }

    private static (int Row, int Column) Choose(PivotQueue<long> queue)
    {
        Assert.True(queue.TryChoose(out int row, out int column));
        return (row, column);
    }
}
