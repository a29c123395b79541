namespace ScNet.Search.Tests.Completeness;

/// <summary>Atlases that several tests read, each made once.</summary>
internal static class MadeAtlases
{
    private static readonly Lazy<Atlas>[] s_atlases = [.. Enumerable.Range(0, 6).Select(k => new Lazy<Atlas>(() => Atlas.Of(k)))];

    /// <summary>The atlas of up to a number of capacitors.</summary>
    public static Atlas Of(int capacitors) => s_atlases[capacitors].Value;
}
