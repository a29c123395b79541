namespace ScNet.Netlists;

/// <summary>The schema of the netlist document, for editors and for other programs.</summary>
internal static class NetlistSchema
{
    private static readonly Lazy<string> s_json = new(() => SchemaResource.Load("ScNet.Netlists.netlist.schema.json"));

    /// <summary>
    /// A JSON Schema (draft 2020-12). It knows keys, types and ranges; what only the whole can tell,
    /// such as the sum of the duties, <see cref="NetlistReader"/> checks.
    /// </summary>
    public static string Json => s_json.Value;
}
