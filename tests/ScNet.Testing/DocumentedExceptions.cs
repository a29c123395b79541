using System.Reflection;
using System.Xml.Linq;

namespace ScNet.Testing;

/// <summary>The exceptions that the documentation of a library names, by member; those of overloads together.</summary>
internal sealed class DocumentedExceptions
{
    private readonly ILookup<string, string> _names;

    private DocumentedExceptions(ILookup<string, string> names) => _names = names;

    /// <summary>Reads what stands beside a library; nothing where there is no documentation.</summary>
    public static DocumentedExceptions Of(Assembly library)
    {
        string path = Path.ChangeExtension(library.Location, ".xml");
        return new(File.Exists(path) ? Read(XDocument.Load(path)) : Read(new XDocument(new XElement("doc"))));
    }

    /// <summary>Whether a member is documented to throw an exception.</summary>
    public bool Allows(MemberInfo member, Exception exception)
    {
        string name = member.Name is ".ctor" ? "#ctor" : member.Name.Replace("get_", string.Empty, StringComparison.Ordinal).Replace("set_", string.Empty, StringComparison.Ordinal);
        Type declaring = member.DeclaringType!;
        string key = $"{(declaring.IsGenericType ? declaring.GetGenericTypeDefinition() : declaring).FullName!.Replace('+', '.')}.{name}";
        for (Type? type = exception.GetType(); type is not null && type != typeof(Exception); type = type.BaseType)
        {
            if (_names[key].Contains(type.FullName!))
            {
                return true;
            }
        }

        return false;
    }

    private static ILookup<string, string> Read(XDocument document) => document.Descendants("member")
        .SelectMany(m => m.Elements("exception").Select(e => (Member: Plain((string)m.Attribute("name")!), Exception: ((string)e.Attribute("cref")!)[2..])))
        .ToLookup(e => e.Member, e => e.Exception);

    // "M:ScNet.Guard.Of``1(System.Double)" is "ScNet.Guard.Of"
    private static string Plain(string name) => name[2..].Split('(')[0].Split("``")[0];
}
