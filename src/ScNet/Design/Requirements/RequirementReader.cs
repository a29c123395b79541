using ScNet.Design.Requirements.Toml;
using ScNet.Netlists;
using ScNet.Netlists.Toml;

namespace ScNet.Design.Requirements;

/// <summary>Reads requirement documents: TOML 1.0 with the keys that <see cref="JsonSchema"/> describes.</summary>
/// <remarks>
/// No document makes it throw. Time is linear in the length of the document, up to the limits of <see cref="NetlistReader"/>. Files
/// and families of candidates are only named here; whether there are any, their building tells.
/// </remarks>
public static class RequirementReader
{
    private static readonly Lazy<string> s_schema = new(() => SchemaResource.Load("ScNet.Design.Requirements.requirement.schema.json"));

    /// <summary>The version of the format that is read and written.</summary>
    public const int FormatVersion = 1;

    /// <summary>
    /// The JSON Schema (draft 2020-12) of the document, for editors and for other programs. It knows keys, types and
    /// ranges; what only the whole can tell, such as the sum of the shares, is checked in reading.
    /// </summary>
    public static string JsonSchema => s_schema.Value;

    /// <summary>Reads the text of a document.</summary>
    /// <param name="text">The document.</param>
    /// <param name="file">The name of the file for the positions of diagnostics; null for text without a file, which they call "requirement".</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static RequirementReading Read(string text, string? file = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        DiagnosticList findings = new(file ?? "requirement");
        Requirement? requirement = TomlDocument.Read(text, RequirementKeys.Format, findings) is { } document
            ? RequirementDocument.Read(document, findings)
            : null;
        return Reading(requirement, findings);
    }

    /// <summary>Reads a file in UTF-8. A file that cannot be read gives one error, not an exception.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or empty.</exception>
    public static RequirementReading ReadFile(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        DiagnosticList findings = new(path);
        return TomlFile.Read(path, RequirementKeys.Format, findings) is { } text ? Read(text, path) : Reading(null, findings);
    }

    /// <summary>Reads a stream in UTF-8 up to its end, such as standard input. What cannot be read gives one error, not an exception.</summary>
    /// <param name="stream">The stream; it stays open.</param>
    /// <param name="file">What the stream is called in the positions of diagnostics; null for none.</param>
    /// <exception cref="ArgumentNullException"><paramref name="stream"/> is null.</exception>
    public static RequirementReading Read(Stream stream, string? file = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        DiagnosticList findings = new(file ?? "requirement");
        return TomlFile.Read(stream, RequirementKeys.Format, findings) is { } text ? Read(text, file) : Reading(null, findings);
    }

    private static RequirementReading Reading(Requirement? requirement, DiagnosticList findings) =>
        new(requirement, findings.Findings(), $"'{findings.File}'");
}
