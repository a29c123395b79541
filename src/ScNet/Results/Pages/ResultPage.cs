using System.Collections;
using System.Collections.Concurrent;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace ScNet.Results.Pages;

/// <summary>How any result of the library shows: as its <see cref="Page"/> where it has one, a list as a table, all else as its text.</summary>
/// <remarks>
/// Notebooks show by this: the package carries a script that asks it for every type of the library, so that the library itself depends
/// on no notebook.
/// </remarks>
public static class ResultPage
{
    // of more results than this a table is shown, and not the page of each
    private const int MostPages = 12;

    // asked once per library
    private static readonly ConcurrentDictionary<Assembly, IReadOnlyDictionary<Type, MethodInfo>> s_factories = new(), s_listFactories = new();

    /// <summary>The page of a result.</summary>
    /// <param name="result">Any result of the library.</param>
    /// <returns>Its page; null where its text says all there is.</returns>
    [RequiresUnreferencedCode("Asks for pages and reads the properties of objects.")]
    public static Page? Of(object result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result switch
        {
            Page page => page,
            _ when FactoriesOf(result.GetType().Assembly).TryGetValue(result.GetType(), out MethodInfo? factory) => Made(factory, result),
            IEnumerable items when !PropertyPage.IsText(result.GetType()) => OfList(items),
            _ when PropertyPage.Shows(result.GetType()) => PropertyPage.Of(result),
            _ => null,
        };
    }

    /// <summary>A result as a fragment of HTML 5 with a style of its own, every name escaped.</summary>
    /// <param name="result">Any object: what has no page shows as its text.</param>
    [RequiresUnreferencedCode("Asks for pages and reads the properties of objects.")]
    public static string ToHtml(object result) => $"<style>{PageStyle.Css}</style>\n{Of(result)?.ToHtml(headingLevel: 3) ?? Text(string.Create(CultureInfo.InvariantCulture, $"{result}"))}";

    private static string Text(string text)
    {
        IEnumerable<string> lines = text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n').Select(l => HtmlText.Of(l));
        return $"<section class=\"scnet-page\"><pre>{string.Join('\n', lines)}</pre></section>\n";
    }

    /// <summary>The types whose values show by <see cref="ToHtml"/>: those of a library of which there are values, and lists of them.</summary>
    /// <param name="library">ScNet or a library built on it.</param>
    [RequiresUnreferencedCode("Asks a library for all its types.")]
    [RequiresDynamicCode("Makes lists of every type.")]
    public static IEnumerable<Type> TypesOf(Assembly library)
    {
        ArgumentNullException.ThrowIfNull(library);
        Type[] types = [.. library.GetExportedTypes().Where(t => !(t is { IsAbstract: true, IsSealed: true } || t.IsByRefLike))];
        return types.Concat(types.Where(t => !t.IsGenericTypeDefinition).Select(t => typeof(IEnumerable<>).MakeGenericType(t)));
    }

    /// <summary>What makes a page of a result and needs nothing else, by the type of the result: the methods "Of" of static classes of the library.</summary>
    [RequiresUnreferencedCode("Asks a library for its pages.")]
    internal static IReadOnlyDictionary<Type, MethodInfo> FactoriesOf(Assembly library) => s_factories.GetOrAdd(library, static l =>
        PagesOf(l).Where(m => m.GetParameters()[0].ParameterType.Assembly == l).ToDictionary(m => m.GetParameters()[0].ParameterType));

    /// <summary>What makes one page of a list of results, by the type of one of them.</summary>
    [RequiresUnreferencedCode("Asks a library for its pages.")]
    internal static IReadOnlyDictionary<Type, MethodInfo> ListFactoriesOf(Assembly library) => s_listFactories.GetOrAdd(library, static l =>
        PagesOf(l).Where(m => m.GetParameters()[0].ParameterType is { IsGenericType: true } list && typeof(IEnumerable).IsAssignableFrom(list) && list.GetGenericArguments()[0].Assembly == l)
            .ToDictionary(m => m.GetParameters()[0].ParameterType.GetGenericArguments()[0]));

    [RequiresUnreferencedCode("Asks a library for its pages.")]
    private static IEnumerable<MethodInfo> PagesOf(Assembly library) => library.GetExportedTypes()
        .Where(t => t is { IsAbstract: true, IsSealed: true } && t != typeof(ResultPage))
        .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Static))
        .Where(m => m.Name == nameof(Of) && m.ReturnType == typeof(Page) && m.GetParameters() is { Length: > 0 } parameters && parameters.Skip(1).All(IsOptional));

    private static Page Made(MethodInfo factory, object result) => (Page)factory.Invoke(
        null, BindingFlags.DoNotWrapExceptions, null, [result, .. factory.GetParameters().Skip(1).Select(p => p.IsOptional ? p.DefaultValue : Array.Empty<double>())], CultureInfo.InvariantCulture)!;

    // with a default, or any number of further figures
    private static bool IsOptional(ParameterInfo parameter) => parameter.IsOptional || (parameter.IsDefined(typeof(ParamCollectionAttribute)) && parameter.ParameterType == typeof(IReadOnlyList<double>));

    // results that have pages of their own: what makes one page of all, or each below the other
    [RequiresUnreferencedCode("Asks for pages and reads the properties of objects.")]
    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = "What has a page is a class, and arrays of classes share their code.")]
    private static Page OfList(IEnumerable list)
    {
        object?[] items = [.. list.Cast<object?>()];
        string title = items.Length switch { 0 => "No entries", 1 => "1 entry", int count => string.Create(CultureInfo.InvariantCulture, $"{count} entries") };
        if (items.Length == 0)
        {
            return new Page(title, []);
        }

        Type? type = items[0]?.GetType();
        if (type is not null && items.Length <= MostPages && items.All(i => i?.GetType() == type))
        {
            if (ListFactoriesOf(type.Assembly).TryGetValue(type, out MethodInfo? ofAll))
            {
                Array typed = Array.CreateInstanceFromArrayType(ofAll.GetParameters()[0].ParameterType.GetGenericArguments()[0].MakeArrayType(), items.Length);
                Array.Copy(items, typed, items.Length);
                return Made(ofAll, typed);
            }

            if (FactoriesOf(type.Assembly).TryGetValue(type, out MethodInfo? ofEach))
            {
                return new Page(title, items.Select(i => Made(ofEach, i!)).SelectMany(p => (IEnumerable<PageBlock>)[new PageHeading(p.Title), .. p.Blocks.Select(Below)]));
            }
        }

        return new Page(title, ListTable.Of(list).Blocks);
    }

    private static PageBlock Below(PageBlock block) => block is PageHeading heading ? new PageHeading(heading.Text, heading.Level + 1) : block;
}
