using CsCheck;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

[Trait("Kind", "Law")]
public class JaggedListsTests
{
    [Fact]
    public void Lists_hold_what_plain_lists_hold() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 9], Gen.Select(Gen.Int[0, 5], Gen.Int[0, 9], Gen.Int[0, 99]).Array[0, 200]).Holds((listCapacity, itemCapacity, steps) =>
        {
            JaggedLists lists = new(listCapacity, itemCapacity);
            List<List<int>> model = [];
            foreach ((int action, int pick, int item) in steps)
            {
                if (action == 0 || model.Count == 0)
                {
                    Assert.Equal(model.Count, lists.AddList(item % 4));
                    model.Add([]);
                    continue;
                }

                int list = pick % model.Count;
                List<int> own = model[list];
                if (action == 1 && own.Count > 0)
                {
                    int position = item % own.Count;
                    lists.RemoveAt(list, position);
                    own[position] = own[^1];
                    own.RemoveAt(own.Count - 1);
                }
                else if (action == 2 && own.Count > 0)
                {
                    int wanted = own[item % own.Count];
                    lists.Remove(list, wanted);
                    own[own.IndexOf(wanted)] = own[^1];
                    own.RemoveAt(own.Count - 1);
                }
                else if (action == 3 && item < 10)
                {
                    lists.Clear(list);
                    own.Clear();
                }
                else
                {
                    int slot = lists.Append(list, item);
                    own.Add(item);
                    Assert.Equal(lists.Start(list) + own.Count - 1, slot);
                }

                Assert.Equal(model.Count, lists.Count);
                for (int l = 0; l < model.Count; l++)
                {
                    Assert.Equal(model[l], lists[l].ToArray());
                    Assert.Equal(model[l].Count, lists.Length(l));
                    Assert.InRange(lists.Start(l) + lists.Length(l), 0, lists.Capacity);
                }
            }
        });
}
