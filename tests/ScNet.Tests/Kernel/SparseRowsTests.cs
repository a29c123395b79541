using CsCheck;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

[Trait("Kind", "Law")]
public class SparseRowsTests
{
    [Fact]
    public void Rows_that_grow_shrink_and_move_keep_what_a_dictionary_keeps() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 20], Gen.Select(Gen.Int[0, 9], Gen.Int[0, 15], Gen.Long).Array[0, 200]).Holds((rowCapacity, entryCapacity, steps) =>
        {
            SparseRows<long> rows = new(rowCapacity, entryCapacity);
            List<Dictionary<int, long>> model = [];
            foreach ((int pick, int column, long value) in steps)
            {
                if (pick == 0 || model.Count == 0)
                {
                    Assert.Equal(model.Count, rows.AddRow());
                    model.Add([]);
                }

                int row = pick % model.Count;
                int position = rows.Find(row, column);
                Assert.Equal(model[row].ContainsKey(column), position >= 0);
                if (position < 0)
                {
                    rows.Append(row, column, value);
                    model[row].Add(column, value);
                }
                else if (value % 2 == 0)
                {
                    rows.RemoveAt(row, position);
                    model[row].Remove(column);
                }
                else
                {
                    rows.Values(row)[position] = value;
                    model[row][column] = value;
                }

                Assert.Equal(model.Count, rows.Count);
                for (int r = 0; r < model.Count; r++)
                {
                    Assert.Equal(model[r].Count, rows.Length(r));
                    Assert.Equal(model[r], rows.Columns(r).ToArray().Zip(rows.Values(r).ToArray()).ToDictionary(e => e.First, e => e.Second));
                }
            }
        });
}
