namespace ScNet.Cli;

/// <summary>Standard output or error: whatever keeps it from being written is an exception of input and output.</summary>
/// <remarks>The runtime tells a file that would grow beyond what files may by an exception of arguments.</remarks>
/// <param name="inner">Where to.</param>
internal sealed class StandardOutput(Stream inner) : Stream
{
    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override void Flush() => inner.Flush();

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        try
        {
            inner.Write(buffer);
        }
        catch (ArgumentOutOfRangeException tooLarge)
        {
            throw new IOException("The file would be larger than files may be here.", tooLarge);
        }
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
