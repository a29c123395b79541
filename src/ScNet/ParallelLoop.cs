using System.Runtime.ExceptionServices;

namespace ScNet;

/// <summary>Loops over many threads that throw what a callback threw, as a loop on one thread would, and not a list of it.</summary>
internal static class ParallelLoop
{
    /// <summary>Runs a loop.</summary>
    /// <param name="loop">The loop; of several exceptions the first counts.</param>
    public static void Run(Action loop)
    {
        try
        {
            loop();
        }
        catch (AggregateException several)
        {
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
    }
}
