// check-release.cs FOLDER VERSION SCHEMAS: holds what .ci/release made to what a release promises. SCHEMAS is the library that
// the makers of the format of the bills of materials give out with their tool, and that has its schemas.
#:property PublishAot=false
#:property JsonSerializerIsReflectionEnabledByDefault=true
using System.IO.Compression;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Runtime.Loader;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;

if (args is not [string folder, string version, string schemas])
{
    Console.Error.WriteLine("check-release.cs FOLDER VERSION SCHEMAS");
    return 2;
}

string[] libraries = ["ScNet", "ScNet.Derivations", "ScNet.Reporting", "ScNet.Search", "ScNet.Synthesis"];
string[] withoutNativeParts = ["ScNet", "ScNet.Derivations", "ScNet.Search"];
List<string> faults = [];

foreach (string id in libraries)
{
    using ZipArchive package = ZipFile.OpenRead(Path.Combine(folder, $"{id}.{version}.nupkg"));
    using ZipArchive symbols = ZipFile.OpenRead(Path.Combine(folder, $"{id}.{version}.snupkg"));
    CheckContents(id, package);
    CheckSymbols(id, symbols);
    CheckBill(id, Dependencies(package));
}

CheckBill("ScNet.Cli", []);
CheckTool();
foreach (string fault in faults)
{
    Console.WriteLine(fault);
}

Console.WriteLine(faults.Count == 0 ? $"{libraries.Length} libraries, their symbols and bills, and the tool hold what a release promises." : $"{faults.Count} faults.");
return faults.Count == 0 ? 0 : 1;

// One assembly that runs everywhere, its documentation, and no native part.
void CheckContents(string id, ZipArchive package)
{
    string[] names = [.. package.Entries.Select(e => e.FullName)];
    Expect(names.Contains($"lib/net10.0/{id}.dll") && names.Contains($"lib/net10.0/{id}.xml"), $"{id}: no assembly with its documentation");
    Expect(names.Contains("README.md"), $"{id}: no README.md");
    foreach (ZipArchiveEntry entry in package.Entries)
    {
        string extension = Path.GetExtension(entry.FullName);
        if (extension is ".dll" or ".exe")
        {
            using PEReader reader = new(new MemoryStream(Bytes(entry)));
            Expect(reader.HasMetadata && reader.PEHeaders.CorHeader!.Flags.HasFlag(CorFlags.ILOnly), $"{id}: {entry.FullName} is native");
            Expect(entry.FullName == $"lib/net10.0/{id}.dll", $"{id}: {entry.FullName} is not its own");
        }

        Expect(extension is not (".so" or ".dylib" or ".a" or ".pdb") && !entry.FullName.StartsWith("runtimes/", StringComparison.Ordinal), $"{id}: {entry.FullName} has no place there");
    }

    XElement metadata = Specification(package);
    Expect(Value(metadata, "id") == id && Value(metadata, "version") == version, $"{id}: the specification names {Value(metadata, "id")} {Value(metadata, "version")}");
    Expect(Value(metadata, "readme") == "README.md" && Value(metadata, "description").Length > 0, $"{id}: the specification has no description");
}

// The lines of every method, from sources that are named by their place in the repository and not on a machine.
void CheckSymbols(string id, ZipArchive symbols)
{
    ZipArchiveEntry? entry = symbols.GetEntry($"lib/net10.0/{id}.pdb");
    Expect(entry is not null, $"{id}: no symbols");
    if (entry is null)
    {
        return;
    }

    using MetadataReaderProvider provider = MetadataReaderProvider.FromPortablePdbStream(new MemoryStream(Bytes(entry)));
    MetadataReader reader = provider.GetMetadataReader();
    string[] documents = [.. reader.Documents.Select(d => reader.GetString(reader.GetDocument(d).Name))];
    Expect(documents.Any(d => d.StartsWith($"/_/src/{id}/", StringComparison.Ordinal)), $"{id}: symbols without its sources");
    foreach (string document in documents.Where(d => !d.StartsWith("/_/", StringComparison.Ordinal) && !d.StartsWith("/_1/", StringComparison.Ordinal)))
    {
        faults.Add($"{id}: the symbols name the source '{document}' by its place on a machine");
    }
}

// A bill in the open format, valid by its schema, that has every package that the specification asks for.
void CheckBill(string id, IReadOnlyList<(string Id, string Version)> dependencies)
{
    string text = File.ReadAllText(Path.Combine(folder, $"{id}.{version}.cdx.json"));
    foreach (string message in Validate(text))
    {
        faults.Add($"{id}: its bill of materials breaks the schema: {message}");
    }

    using JsonDocument bill = JsonDocument.Parse(text);
    JsonElement subject = bill.RootElement.GetProperty("metadata").GetProperty("component");
    Expect(subject.GetProperty("name").GetString() == id && subject.GetProperty("version").GetString() == version, $"{id}: its bill of materials is of something else");
    (string Id, string Version)[] components =
    [
        .. bill.RootElement.GetProperty("components").EnumerateArray()
            .Where(c => c.GetProperty("scope").GetString() == "required")
            .Select(c => (c.GetProperty("name").GetString()!, c.GetProperty("version").GetString()!)),
    ];
    Expect(components.Length >= dependencies.Count && components.Length > 0, $"{id}: an empty bill of materials");
    foreach ((string Id, string Version) dependency in dependencies.Except(components))
    {
        faults.Add($"{id}: its bill of materials lacks {dependency.Id} {dependency.Version}");
    }

    if (withoutNativeParts.Contains(id))
    {
        foreach ((string Id, string Version) component in components.Where(c => !libraries.Contains(c.Id)))
        {
            CheckRestored(id, component.Id, component.Version);
        }
    }
}

// What comes along with a library that promises to have no native parts has none either.
void CheckRestored(string id, string dependency, string dependencyVersion)
{
    string cache = Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } set ? set : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
    string place = Path.Combine(cache, dependency.ToLowerInvariant(), dependencyVersion.ToLowerInvariant());
    string[] files = Directory.Exists(place) ? Directory.GetFiles(place, "*", SearchOption.AllDirectories) : [];
    Expect(files.Length > 0, $"{id}: {dependency} {dependencyVersion} is not among the restored packages");
    foreach (string file in files)
    {
        bool native = Path.GetExtension(file) is ".so" or ".dylib" or ".a" || file.Replace('\\', '/').Contains("/native/", StringComparison.Ordinal);
        if (Path.GetExtension(file) is ".dll")
        {
            using PEReader reader = new(File.OpenRead(file));
            native = !reader.HasMetadata;
        }

        Expect(!native, $"{id}: {dependency} has the native part {Path.GetRelativePath(place, file)}");
    }
}

// The package that is installed points to those of some platforms and to one for any other, all of which are there; that one has
// the native parts of every supported platform.
void CheckTool()
{
    using ZipArchive pointer = ZipFile.OpenRead(Path.Combine(folder, $"ScNet.Cli.{version}.nupkg"));
    ZipArchiveEntry settings = pointer.Entries.Single(e => e.Name == "DotnetToolSettings.xml");
    XElement[] platforms = [.. XDocument.Parse(Encoding.UTF8.GetString(Bytes(settings)).TrimStart('\uFEFF')).Descendants("RuntimeIdentifierPackage")];
    foreach (XElement platform in platforms)
    {
        string file = $"{platform.Attribute("Id")!.Value}.{version}.nupkg";
        Expect(File.Exists(Path.Combine(folder, file)), $"The tool points to {file}, which is not there");
    }

    // without a linker the package that is installed is the one for all platforms
    string[] usual = ["linux-x64", "linux-arm64", "linux-musl-x64", "osx", "win-x64", "win-arm64"];
    string general = platforms.Length == 0 ? "ScNet.Cli" : "ScNet.Cli.any";
    using ZipArchive any = ZipFile.OpenRead(Path.Combine(folder, $"{general}.{version}.nupkg"));
    foreach (ZipArchiveEntry native in any.Entries.Where(e => e.FullName.Contains("/native/", StringComparison.Ordinal)))
    {
        bool isUsual = usual.Any(u => native.FullName.Contains($"/runtimes/{u}/native/", StringComparison.Ordinal)) && !native.FullName.EndsWith(".pdb", StringComparison.Ordinal);
        Expect(isUsual, $"The tool for any platform carries {native.FullName}, {native.Length} bytes that few need");
    }

    foreach (string platform in (string[])["linux-x64", "linux-arm64", "win-x64", "win-arm64"])
    {
        Expect(any.Entries.Any(e => e.FullName.Contains($"/runtimes/{platform}/native/", StringComparison.Ordinal)), $"The tool for any platform has no native parts for {platform}");
    }
}

static IReadOnlyList<(string Id, string Version)> Dependencies(ZipArchive package) =>
[
    .. Specification(package).Descendants().Where(e => e.Name.LocalName == "dependency")
        .Select(e => (e.Attribute("id")!.Value, e.Attribute("version")!.Value.Trim('[', ']'))),
];

static XElement Specification(ZipArchive package)
{
    ZipArchiveEntry entry = package.Entries.Single(e => e.FullName.EndsWith(".nuspec", StringComparison.Ordinal));
    return XDocument.Parse(Encoding.UTF8.GetString(Bytes(entry)).TrimStart('\uFEFF')).Root!.Elements().First();
}

static string Value(XElement metadata, string name) => metadata.Elements().FirstOrDefault(e => e.Name.LocalName == name)?.Value ?? "";

static byte[] Bytes(ZipArchiveEntry entry)
{
    using Stream stream = entry.Open();
    using MemoryStream copy = new();
    stream.CopyTo(copy);
    return copy.ToArray();
}

// By the validator of that library: it takes the schema of the version that the bill names.
IReadOnlyList<string> Validate(string text)
{
    AssemblyDependencyResolver resolver = new(schemas);
    AssemblyLoadContext context = new("schemas");
    context.Resolving += (c, name) =>
        resolver.ResolveAssemblyToPath(name) is { } path ? c.LoadFromAssemblyPath(path)
        : File.Exists(Path.Combine(Path.GetDirectoryName(schemas)!, $"{name.Name}.dll")) ? c.LoadFromAssemblyPath(Path.Combine(Path.GetDirectoryName(schemas)!, $"{name.Name}.dll"))
        : null;
    Assembly library = context.LoadFromAssemblyPath(schemas);
    MethodInfo validate = library.GetType("CycloneDX.Json.Validator", throwOnError: true)!.GetMethods()
        .Single(m => m.Name == "Validate" && m.GetParameters() is [{ ParameterType: var given }, _] && given == typeof(string));
    Type versions = validate.GetParameters()[1].ParameterType;
    using JsonDocument bill = JsonDocument.Parse(text);
    object specification = Enum.Parse(versions, $"v{bill.RootElement.GetProperty("specVersion").GetString()!.Replace('.', '_')}");
    object result = validate.Invoke(null, [text, specification])!;
    bool valid = (bool)result.GetType().GetProperty("Valid")!.GetValue(result)!;
    IEnumerable<string> messages = (IEnumerable<string>?)result.GetType().GetProperty("Messages")!.GetValue(result) ?? [];
    return valid ? [] : [.. messages.DefaultIfEmpty("not valid")];
}

void Expect(bool holds, string fault)
{
    if (!holds)
    {
        faults.Add($"{fault}.");
    }
}
