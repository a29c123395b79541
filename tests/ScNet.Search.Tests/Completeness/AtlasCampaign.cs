namespace ScNet.Search.Tests.Completeness;

/// <summary>How far the proofs of completeness go: small numbers of capacitors on a usual run, more in <c>.ci/campaign atlas</c>.</summary>
internal static class AtlasCampaign
{
    /// <summary>Whether the environment asks for the long run.</summary>
    public static bool IsOn => Environment.GetEnvironmentVariable("SCNET_ATLAS_CAMPAIGN") == "1";

    /// <summary>The rows up to a number of capacitors, which is their first entry.</summary>
    public static IEnumerable<object[]> UpTo(int usual, int campaign, IEnumerable<object[]> rows) =>
        rows.Where(row => (int)row[0] <= (IsOn ? campaign : usual));
}
