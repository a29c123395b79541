using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace ScNet.Testing;

/// <summary>
/// Calls every public constructor, method, operator and accessor of a library with one hostile argument at a time among sound ones, and
/// tells every outcome that is neither an answer nor a refusal: arguments are refused by an exception of arguments, a mistake of the user
/// by one that carries diagnostics, anything else has to be documented.
/// </summary>
internal sealed class HostileCalls
{
    private const int MostInstances = 2, MostAccepted = 4, MostItems = 50;

    private readonly SortedSet<string> _faults = new(StringComparer.Ordinal);
    private readonly Dictionary<Type, List<object>> _accepted = [];
    private readonly HashSet<string> _answered = new(StringComparer.Ordinal), _members = new(StringComparer.Ordinal), _used = new(StringComparer.Ordinal);
    private readonly DocumentedExceptions _documented;
    private readonly SoundValues _sound;
    private readonly HostileValues _hostile;
    private readonly IReadOnlyDictionary<string, string> _skipped;

    private HostileCalls(Assembly library, SoundValues sound, IReadOnlyDictionary<string, string> skipped)
    {
        _documented = DocumentedExceptions.Of(library);
        _sound = sound;
        _hostile = new HostileValues(type => _accepted.TryGetValue(type, out List<object>? known) ? known : []);
        _skipped = skipped;
    }

    /// <summary>Outcomes that nobody expects, one line each: member, arguments, exception.</summary>
    public IReadOnlyCollection<string> Faults => _faults;

    /// <summary>Members that gave no answer to any arguments, sound ones included: they were hardly tried.</summary>
    public IEnumerable<string> Unanswered => _members.Except(_answered).Order(StringComparer.Ordinal);

    /// <summary>Members that are left out but do not exist.</summary>
    public IEnumerable<string> NeverSkipped => _skipped.Keys.Except(_used).Order(StringComparer.Ordinal);

    /// <summary>How many members were called.</summary>
    public int MemberCount => _members.Count;

    /// <summary>How many calls were made.</summary>
    public int CallCount { get; private set; }

    /// <summary>Makes all calls, in the order of names.</summary>
    /// <param name="types">The types whose members are called.</param>
    /// <param name="roots">Results from which objects of every type are reached.</param>
    /// <param name="names">Names of elements, modes and so on of those results.</param>
    /// <param name="skipped">Members that are left out, as "Type.Member", each with the reason.</param>
    public static HostileCalls On(IEnumerable<Type> types, IEnumerable<object> roots, IReadOnlyList<string> names, IReadOnlyDictionary<string, string>? skipped = null)
    {
        Type[] all = [.. types.Where(t => !t.IsEnum && !t.IsInterface && !typeof(Delegate).IsAssignableFrom(t) && !t.IsByRefLike).Select(Closed).OfType<Type>().OrderBy(t => t.FullName, StringComparer.Ordinal)];
        HostileCalls calls = new(all[0].Assembly, new SoundValues(ShownTypes.Reached(roots), names), skipped ?? new Dictionary<string, string>());
        const BindingFlags Own = BindingFlags.Public | BindingFlags.DeclaredOnly;
        foreach (ConstructorInfo constructor in all.Where(t => !t.IsAbstract).SelectMany(t => t.GetConstructors(Own | BindingFlags.Instance)))
        {
            calls.Call(constructor, [null]);
        }

        foreach (Type type in all)
        {
            foreach (MethodInfo method in type.GetMethods(Own | BindingFlags.Static))
            {
                calls.Call(method, [null]);
            }
        }

        foreach (Type type in all.Where(t => !(t.IsAbstract && t.IsSealed)))
        {
            object[] instances = [.. calls._sound.Objects(type).Take(MostInstances), .. calls._accepted.TryGetValue(type, out List<object>? odd) ? odd : [], .. type.IsValueType ? [RuntimeHelpers.GetUninitializedObject(type)] : Array.Empty<object>()];
            foreach (MethodInfo method in type.GetMethods(Own | BindingFlags.Instance))
            {
                calls.Call(method, instances);
            }
        }

        return calls;
    }

    private void Call(MethodBase method, object?[] instances)
    {
        string member = $"{method.DeclaringType!.Name.Split('`')[0]}.{method.Name}";
        if (_skipped.ContainsKey(member))
        {
            _used.Add(member);
            return;
        }

        if (method is MethodInfo { IsGenericMethodDefinition: true } generic)
        {
            if (Closed(generic) is not { } closed)
            {
                return;
            }

            method = closed;
        }

        ParameterInfo[] parameters = method.GetParameters();
        if (parameters.Any(p => p.ParameterType.IsByRefLike || p.ParameterType.IsPointer) || method is MethodInfo { ReturnType.IsByRefLike: true })
        {
            return;
        }

        _members.Add(member);
        object?[][] sound = [.. parameters.Select(p => _sound.Of(p).DefaultIfEmpty(null).ToArray())];
        foreach (object? instance in instances)
        {
            Try(member, method, instance, parameters, [.. sound.Select(s => new HostileValue("sound", () => s[0]))]);
            Try(member, method, instance, parameters, [.. sound.Select(s => new HostileValue("sound", () => s[^1]))]);
            for (int i = 0; i < parameters.Length; i++)
            {
                foreach (HostileValue value in _hostile.Of(parameters[i]))
                {
                    HostileValue[] arguments = [.. sound.Select(s => new HostileValue("sound", () => s[0]))];
                    arguments[i] = value;
                    Try(member, method, instance, parameters, arguments);
                }
            }
        }
    }

    private void Try(string member, MethodBase method, object? instance, ParameterInfo[] parameters, HostileValue[] values)
    {
        CallCount++;
        string told = $"{member}({string.Join(", ", parameters.Zip(values, (p, v) => $"{p.Name}: {v.Name}"))})";
        try
        {
            // an initialiser changes what is made, and no object that others hold
            object? target = instance is not null && method.Name.StartsWith("set_", StringComparison.Ordinal) && instance is not ValueType
                ? typeof(object).GetMethod(nameof(MemberwiseClone), BindingFlags.NonPublic | BindingFlags.Instance)!.Invoke(instance, null) : instance;
            object?[] arguments = [.. parameters.Zip(values, (p, v) => Argument(p, v.Make()))];
            object? answer = method is ConstructorInfo constructor ? constructor.Invoke(arguments) : method.Invoke(target, arguments);
            Read(answer);
            _answered.Add(member);
            if (answer is double.NaN && !(method.IsSpecialName && IsRecord(instance)))
            {
                _faults.Add($"{told} is not a number");
            }

            if (method is ConstructorInfo && values.Any(v => v.Name != "sound") && answer is not null)
            {
                List<object> known = _accepted.TryGetValue(answer.GetType(), out List<object>? list) ? list : _accepted[answer.GetType()] = [];
                if (known.Count < MostAccepted)
                {
                    known.Add(answer);
                }
            }
        }
        catch (Exception thrown)
        {
            Exception exception = thrown is TargetInvocationException { InnerException: { } inner } ? inner : thrown;
            if (!(exception is ArgumentException or ScNetException || values.Any(v => v.Allows?.IsInstanceOfType(exception) == true) || _documented.Allows(method, exception)))
            {
                string place = exception.StackTrace?.Split('\n').FirstOrDefault(l => l.Contains("ScNet.", StringComparison.Ordinal))?.Trim() ?? string.Empty;
                _faults.Add($"{told} throws {exception.GetType().Name}: {exception.Message.Split('\n')[0]} {place}");
            }
        }
    }

    // a record, or a value, gives back what it was made of
    private static bool IsRecord(object? instance) => instance is ValueType || instance?.GetType().GetMethod("<Clone>$") is not null;

    private static object? Argument(ParameterInfo parameter, object? value) =>
        value is null && parameter.ParameterType is { IsValueType: true } type && Nullable.GetUnderlyingType(type) is null ? RuntimeHelpers.GetUninitializedObject(type) : value;

    // what is enumerated only when it is asked for
    private static void Read(object? answer)
    {
        if (answer is IEnumerable items and not string)
        {
            foreach (object? _ in items.Cast<object?>().Take(MostItems))
            {
            }
        }
    }

    private static Type? Closed(Type type) => !type.IsGenericTypeDefinition ? type : Made(type.GetGenericArguments(), type.MakeGenericType);

    private static MethodInfo? Closed(MethodInfo method) => Made(method.GetGenericArguments(), method.MakeGenericMethod);

    private static T? Made<T>(Type[] parameters, Func<Type[], T> make)
        where T : class
    {
        foreach (Type argument in new[] { typeof(double), typeof(string), typeof(Converter) })
        {
            try
            {
                return make([.. parameters.Select(_ => argument)]);
            }
            catch (ArgumentException)
            {
                // another one may meet what it asks for
            }
        }

        return null;
    }
}
