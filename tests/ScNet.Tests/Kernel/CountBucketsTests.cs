using CsCheck;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

[Trait("Kind", "Law")]
public class CountBucketsTests
{
    [Fact]
    public void The_least_count_is_found_as_in_a_dictionary() =>
        Gen.Select(Gen.Int[1, 12], Gen.Int[0, 9]).SelectMany((items, largest) =>
            Gen.Select(Gen.Const(items), Gen.Const(largest), Gen.Select(Gen.Int[0, items - 1], Gen.Int[-2, largest]).Array[0, 100])).Holds((items, largest, steps) =>
        {
            // on memory that held other items
            CountBuckets buckets = new(5, 3);
            buckets.File(4, 3);
            buckets.File(1, 0);
            buckets.Reset(items, largest);
            Dictionary<int, int> model = [];
            Assert.Equal(-1, buckets.Least());
            foreach ((int item, int count) in steps)
            {
                if (count < 0)
                {
                    buckets.Remove(item);
                    model.Remove(item);
                }
                else
                {
                    buckets.File(item, count);
                    model[item] = count;
                }

                for (int i = 0; i < items; i++)
                {
                    Assert.Equal(model.GetValueOrDefault(i, -1), buckets.Count(i));
                }

                int least = buckets.Least();
                Assert.Equal(model.Count == 0 ? -1 : model.Values.Min(), least < 0 ? -1 : model[least]);
            }

            // taking out the least one by one empties them in ascending order
            int before = 0;
            while (buckets.Least() is var next and >= 0)
            {
                Assert.InRange(buckets.Count(next), before, largest);
                before = buckets.Count(next);
                buckets.Remove(next);
                Assert.True(model.Remove(next));
            }

            Assert.Empty(model);
        });
}
