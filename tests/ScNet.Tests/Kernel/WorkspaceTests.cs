using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

/// <summary>What is used again for as much as before takes no memory.</summary>
public class WorkspaceTests
{
    private const string Matrix = "2 1 0 3 1; 1 0 2 0 1; 3 1 2 0 0; 0 2 0 5 1";

    [Fact]
    public void Lists_take_no_memory_again()
    {
        JaggedLists lists = new(3, 12);
        AssertTakesNothing(() =>
        {
            lists.Reset(3, 12);
            for (int list = 0; list < 3; list++)
            {
                lists.AddList(4);
            }
        });
        Assert.Equal(12, lists.Capacity);
    }

    [Fact]
    public void Lists_have_the_room_that_was_asked_for()
    {
        Assert.Equal(9, new JaggedLists(2, 9).Capacity);
        JaggedLists lists = new(0, 0);
        lists.Reset(2, 7);
        Assert.Equal(7, lists.Capacity);
    }

    [Fact]
    public void Buckets_take_no_memory_again()
    {
        CountBuckets buckets = new(5, 3);
        AssertTakesNothing(() => buckets.Reset(5, 3));
    }

    [Fact]
    public void An_elimination_takes_no_memory_again()
    {
        Elimination<long> elimination = new();
        Queue<SparseRows<long>> matrices = new(Enumerable.Range(0, 9).Select(_ => PivotQueueTests.Rows(Matrix)));
        AssertTakesNothing(() => elimination.TryRun(matrices.Dequeue(), 3, 1));
    }

    [Fact]
    public void A_queue_takes_no_memory_again()
    {
        SparseRows<long> rows = PivotQueueTests.Rows(Matrix);
        PivotQueue<long> queue = new();
        AssertTakesNothing(() => queue.Reset(rows, 4));
    }

    // more vertices and edges than the stack has room for
    [Fact]
    public void A_forest_takes_no_memory_again()
    {
        int[] first = [.. Enumerable.Range(0, 99)], second = [.. Enumerable.Range(1, 99)], edges = [.. Enumerable.Range(0, 99)];
        SpanningForest forest = new();
        AssertTakesNothing(() => forest.Build(100, first, second, edges));
        Assert.Equal((1, 99), (forest.TreeCount, forest.Depth[99]));
    }

    // a capacitor that the input holds in both phases is set aside
    [Fact]
    public void Loops_take_no_memory_again()
    {
        CandidateNetwork network = new();
        network.Wire(3, [new(1, 0), new(1, 2)], [new(new(1, 0), IsGiven: true)], [new(2, 0)]);
        PhaseForest[] forests = [PhaseForest.Of(network, [true]), PhaseForest.Of(network, [false])];
        LoopSet loops = LoopSet.Of(network, forests);
        AssertTakesNothing(() => loops.Find(network, forests));
        Assert.NotNull(loops.Repeats);
    }

    // what the phase before left behind is not taken for this one's
    [Fact]
    public void A_phase_on_memory_of_a_larger_one_has_its_own_groups()
    {
        CandidateNetwork large = new(), small = new();
        large.Wire(4, [], [], [new(1, 3), new(0, 2)]);
        small.Wire(5, [], [], [new(0, 1), new(2, 3)]);
        PhaseForest forest = new();
        foreach ((CandidateNetwork network, bool isClosed, int[][] groups) in new[] { (large, true, (int[][])[[0, 2], [1, 3]]), (small, false, [[0], [1], [2], [3], [4]]), (small, true, [[0, 1], [2, 3], [4]]), (large, true, [[0, 2], [1, 3]]) })
        {
            forest.Build(network, [isClosed, isClosed]);
            Assert.Equal(groups, Enumerable.Range(0, forest.GroupCount).Select(g => forest.Members(g).ToArray().Order().ToArray()));
        }
    }

    private static void AssertTakesNothing(Action use)
    {
        use();
        use();
        long before = GC.GetAllocatedBytesForCurrentThread();
        use();
        use();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
