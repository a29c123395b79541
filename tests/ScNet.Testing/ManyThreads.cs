using System.Runtime.ExceptionServices;

namespace ScNet.Testing;

/// <summary>The same work at the same time on many threads.</summary>
internal static class ManyThreads
{
    /// <summary>So many at once.</summary>
    public const int Count = 32;

    /// <summary>Fails where what all threads find of one object is not what a single one finds of its like.</summary>
    /// <param name="make">Makes an object on which nothing has been asked yet, and what is asked of it.</param>
    public static void AgreeWithOne(Func<Func<string>> make)
    {
        string alone = make()();
        Func<string> shared = make();
        string?[] found = new string?[Count];
        Exception?[] failures = new Exception?[Count];
        using Barrier start = new(Count);
        Thread[] threads = [.. Enumerable.Range(0, Count).Select(i => new Thread(() =>
        {
            start.SignalAndWait();
            try
            {
                found[i] = shared();
            }
            catch (Exception exception)
            {
                failures[i] = exception;
            }
        }))];
        Array.ForEach(threads, t => t.Start());
        Array.ForEach(threads, t => t.Join());
        if (failures.OfType<Exception>().FirstOrDefault() is { } failure)
        {
            ExceptionDispatchInfo.Throw(failure);
        }

        Assert.Equal([alone], found.Distinct());
    }
}
