using System.Collections;
using System.Reflection;
using ScNet.Results.Pages;

namespace ScNet.Testing;

/// <summary>Which types of a library show as pages, found with real values of them.</summary>
internal static class ShownTypes
{
    // of each type so many values are looked into: the first may hold nothing where the others do
    private const int ValuesOfType = 6;

    // what a long list holds is alike
    private const int ItemsOfList = 6;

    /// <summary>Values of every type of a library that can be reached from some results by their public properties and lists.</summary>
    public static IReadOnlyDictionary<Type, List<object>> Reached(IEnumerable<object> roots, Assembly library) => Reached(roots).Where(f => f.Key.Assembly == library).ToDictionary();

    /// <summary>Values of every type, whatever its library.</summary>
    public static IReadOnlyDictionary<Type, List<object>> Reached(IEnumerable<object> roots)
    {
        Dictionary<Type, List<object>> found = [];
        Queue<object> open = new(roots);
        while (open.TryDequeue(out object? value))
        {
            if (value is IEnumerable items and not string)
            {
                foreach (object item in items.Cast<object?>().Take(ItemsOfList).OfType<object>())
                {
                    open.Enqueue(item);
                }
            }

            Type type = Visible(value.GetType());
            if (type.Assembly.GetName().Name!.StartsWith("ScNet", StringComparison.Ordinal) && !type.IsEnum)
            {
                List<object> known = found.TryGetValue(type, out List<object>? list) ? list : found[type] = [];
                if (known.Count < ValuesOfType && !known.Contains(value))
                {
                    known.Add(value);
                    foreach (PropertyInfo property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0 && !p.PropertyType.IsByRefLike))
                    {
                        if (property.GetValue(value) is { } next)
                        {
                            open.Enqueue(next);
                        }
                    }
                }
            }
        }

        return found;
    }

    /// <summary>The types of which a user gets values: neither static, nor of words alone, nor a list, nor what is marked as text.</summary>
    public static IEnumerable<Type> ThatShouldShow(Assembly library) => library.GetExportedTypes().Where(t =>
        !t.IsEnum && !t.IsInterface && !(t is { IsAbstract: true, IsSealed: true }) && !t.IsByRefLike && !t.ContainsGenericParameters
        && !typeof(IEnumerable).IsAssignableFrom(t) && !typeof(Delegate).IsAssignableFrom(t) && !typeof(Exception).IsAssignableFrom(t) && !typeof(IFormattable).IsAssignableFrom(t)
        && !t.GetCustomAttributes().Any(a => a.GetType().Name == "ShownAsTextAttribute"));

    /// <summary>What is wrong with the page of a value, or with the table of a list of it; none where both are fit to be shown.</summary>
    public static IEnumerable<string> Faults(Type type, object value)
    {
        foreach ((string what, Page? page) in new[] { ("the value", ResultPage.Of(value)), ("a list", ResultPage.Of(Several(type, value))) })
        {
            if (page is null)
            {
                yield return $"{type}: {what} shows as text";
                continue;
            }

            string text = page.ToText();
            foreach (string sign in new[] { "System.", "`1", " { ", "ScNet.", "Position  Entry" }.Where(s => text.Contains(s, StringComparison.Ordinal)))
            {
                yield return $"{type}: {what} shows '{sign}' in {text}";
            }
        }
    }

    private static Array Several(Type type, object value)
    {
        Array several = Array.CreateInstance(type, 2);
        several.SetValue(value, 0);
        several.SetValue(value, 1);
        return several;
    }

    private static Type Visible(Type type) => type.IsVisible || type.BaseType is null ? type : Visible(type.BaseType);
}
