namespace ScNet.Fuzzing;

/// <summary>A run in a campaign, where beside the properties the processor time counts; tests leave it alone.</summary>
internal static class TimedRun
{
    // the first runs pay for the translation of methods to machine code
    private const int Untimed = 200;

    private static readonly TimeSpan s_most = TimeSpan.FromSeconds(1);
    private static int s_count;

    /// <summary>Runs a target; the processor time of the process is counted, which does not depend on what else a machine does.</summary>
    /// <exception cref="BrokenPropertyException">A property is broken, or the run took more than a second.</exception>
    public static void Execute(FuzzTarget target, byte[] bytes)
    {
        // an edge is told by the block before it, which shall not be one of the text before
        SharpFuzz.Common.Trace.PrevLocation = 0;
        TimeSpan before = Environment.CpuUsage.TotalTime;
        FuzzRun.Execute(target, bytes);
        TimeSpan taken = Environment.CpuUsage.TotalTime - before;
        Property.Holds(taken <= s_most || ++s_count <= Untimed, $"a second at most for one text, but it took {taken}");
    }
}
