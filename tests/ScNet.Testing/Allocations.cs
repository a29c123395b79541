namespace ScNet.Testing;

/// <summary>What an action costs, counted in a way that does not depend on how busy the machine is.</summary>
internal static class Allocations
{
    /// <summary>The bytes that an action allocates on this thread.</summary>
    public static long Of(Action action)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        action();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
