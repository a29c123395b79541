using System.Text.Json;

namespace ScNet.Derivations.Snapshots;

/// <summary>What is wrong with a document that is JSON, and the value where it shows.</summary>
internal sealed class SnapshotFaultException(string code, string message, JsonElement place) : Exception(message)
{
    /// <summary>One of <see cref="DiagnosticCodes"/>.</summary>
    public string Code => code;

    /// <summary>The value where it shows, of a document that is still open.</summary>
    public JsonElement Place => place;
}
