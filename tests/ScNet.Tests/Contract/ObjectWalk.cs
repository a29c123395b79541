using System.Collections;
using System.Reflection;

namespace ScNet.Tests.Contract;

/// <summary>
/// Reads every public property of an object of the library, and of every object of the library that it
/// leads to, and tells where the contract is broken: a property that throws, a list that can be changed,
/// a number that is not one.
/// </summary>
internal sealed class ObjectWalk
{
    // enough to come by every kind of result, and short enough for every run
    private const int MostObjects = 20_000;
    private const int MostEntries = 6;

    private readonly HashSet<object> _seen = new(ReferenceEqualityComparer.Instance);
    private readonly Queue<(object Value, string Path)> _waiting = [];
    private readonly SortedSet<string> _faults = new(StringComparer.Ordinal);
    private readonly HashSet<Type> _types = [];
    private readonly HashSet<Assembly> _library;

    private ObjectWalk(IEnumerable<Assembly> library) => _library = [.. library];

    /// <summary>The faults, one line each: type, property and what is wrong.</summary>
    public IReadOnlyCollection<string> Faults => _faults;

    /// <summary>The types of the library that were come by.</summary>
    public IReadOnlyCollection<Type> Types => _types;

    public static ObjectWalk From(IEnumerable<Assembly> library, params object[] roots)
    {
        ObjectWalk walk = new(library);
        foreach (object root in roots)
        {
            walk.Visit(root, root.GetType().Name);
        }

        while (walk._waiting.TryDequeue(out (object Value, string Path) next) && walk._seen.Count < MostObjects)
        {
            walk.ReadProperties(next.Value);
        }

        return walk;
    }

    private void ReadProperties(object owner)
    {
        foreach (PropertyInfo property in owner.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.GetIndexParameters().Length == 0 && p.GetMethod?.IsPublic == true && !p.PropertyType.IsByRefLike))
        {
            string place = $"{owner.GetType().Name}.{property.Name}";
            try
            {
                Visit(property.GetValue(owner), place);
            }
            catch (TargetInvocationException exception)
            {
                _faults.Add($"{place} throws {exception.InnerException?.GetType().Name}");
            }
        }
    }

    private void Visit(object? value, string place)
    {
        switch (value)
        {
            case null or string:
                return;
            case double.NaN or float.NaN:
                _faults.Add($"{place} is not a number");
                return;
            case IEnumerable list:
                if (IsChangeable(value))
                {
                    _faults.Add($"{place} hands out a {value.GetType().Name}");
                }

                foreach (object? entry in list.Cast<object?>().Take(MostEntries))
                {
                    Visit(entry, place);
                }

                break;
        }

        // what the compiler wraps a list in has a name that cannot be written
        if (_library.Contains(value.GetType().Assembly) && value is not Array && value.GetType().Name[0] != '<' && (value.GetType().IsValueType || _seen.Add(value)))
        {
            _types.Add(value.GetType().IsGenericType ? value.GetType().GetGenericTypeDefinition() : value.GetType());
            if (!value.GetType().IsEnum)
            {
                _waiting.Enqueue((value, place));
            }
        }
    }

    // an array without entries can be given to anybody
    private static bool IsChangeable(object value) => value is Array array
        ? array.Length > 0
        : value is IList { IsReadOnly: false } or IDictionary { IsReadOnly: false }
            || value.GetType().GetInterfaces().Append(value.GetType()).Any(i => i.IsGenericType
                && i.GetGenericTypeDefinition() == typeof(ICollection<>)
                && !(bool)i.GetProperty(nameof(ICollection<int>.IsReadOnly))!.GetValue(value)!);
}
