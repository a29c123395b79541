using System.Reflection;

namespace ScNet.Netlists;

/// <summary>A schema that the assembly carries.</summary>
internal static class SchemaResource
{
    /// <summary>The text of a schema.</summary>
    /// <param name="name">The name of the resource, such as "ScNet.Netlists.netlist.schema.json".</param>
    /// <param name="assembly">The assembly that carries it; this one where left out.</param>
    public static string Load(string name, Assembly? assembly = null)
    {
        using Stream stream = (assembly ?? typeof(SchemaResource).Assembly).GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The assembly lacks its resource {name}.");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }
}
