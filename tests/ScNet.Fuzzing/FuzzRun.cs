namespace ScNet.Fuzzing;

/// <summary>Runs a target on one text and holds it to what it may cost.</summary>
internal static class FuzzRun
{
    /// <summary>The most bytes that reading one text and checking its properties may allocate in all, kept or not: 256 MB.</summary>
    public const long MaximumAllocation = 256L << 20;

    /// <summary>Runs a target.</summary>
    /// <param name="target">The target.</param>
    /// <param name="bytes">The text; what is longer than the target takes is cut off.</param>
    /// <returns>The bytes that were allocated.</returns>
    /// <exception cref="BrokenPropertyException">A property is broken, or too much was allocated.</exception>
    public static long Execute(FuzzTarget target, byte[] bytes)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        target.Try(bytes.Length <= target.MaximumLength ? bytes : bytes[..target.MaximumLength]);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Property.Holds(allocated <= MaximumAllocation, $"at most {MaximumAllocation} bytes for one text, but {allocated} were allocated");
        return allocated;
    }
}
