namespace ScNet.Cli;

/// <summary>While it stands, the key that would end the tool only stops the work, so that what is done is still written; a second time it ends the tool.</summary>
internal sealed class Interruption : IDisposable
{
    private readonly CancellationTokenSource _source;

    public Interruption(CancellationToken outer)
    {
        _source = CancellationTokenSource.CreateLinkedTokenSource(outer);
        Console.CancelKeyPress += Stop;
    }

    /// <summary>Asked to stop once the key was pressed.</summary>
    public CancellationToken Token => _source.Token;

    public void Dispose()
    {
        Console.CancelKeyPress -= Stop;
        _source.Dispose();
    }

    private void Stop(object? sender, ConsoleCancelEventArgs pressed)
    {
        pressed.Cancel = !_source.IsCancellationRequested;
        _source.Cancel();
    }
}
