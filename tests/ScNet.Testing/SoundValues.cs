using System.Buffers;
using System.Linq.Expressions;
using System.Numerics;
using System.Reflection;
using System.Runtime.CompilerServices;
using Fractions;

namespace ScNet.Testing;

/// <summary>Arguments that a member takes, so that a hostile one beside them is what it stumbles over.</summary>
/// <param name="pool">Objects of the libraries by type.</param>
/// <param name="names">Texts that are names of elements, modes and the like.</param>
internal sealed class SoundValues(IReadOnlyDictionary<Type, List<object>> pool, IReadOnlyList<string> names)
{
    /// <summary>Objects of a type, or of one derived from it.</summary>
    public IEnumerable<object> Objects(Type type) => pool.TryGetValue(type, out List<object>? own) ? own : pool.Where(p => type.IsAssignableFrom(p.Key) && type != typeof(object)).SelectMany(p => p.Value);

    /// <summary>Sound values of a parameter, the likeliest first; none where it has to be left null.</summary>
    public IEnumerable<object?> Of(ParameterInfo parameter)
    {
        Type type = parameter.ParameterType.IsByRef ? parameter.ParameterType.GetElementType()! : parameter.ParameterType;
        object?[] given = parameter.HasDefaultValue ? [parameter.DefaultValue ?? (type.IsValueType && Nullable.GetUnderlyingType(type) is null ? RuntimeHelpers.GetUninitializedObject(type) : null)] : [];
        return given.Concat(Of(type)).Take(2);
    }

    private IEnumerable<object?> Of(Type type) => type switch
    {
        _ when Nullable.GetUnderlyingType(type) is { } inner => Of(inner),
        _ when type == typeof(double) => [0.5, 2.0],
        _ when type == typeof(int) => [1, 2],
        _ when type == typeof(long) => [2L],
        _ when type == typeof(bool) => [false],
        _ when type == typeof(string) => names,
        _ when type == typeof(Fraction) => [new Fraction(1, 2)],
        _ when type == typeof(BigInteger) => [new BigInteger(2)],
        _ when type.IsEnum => Enum.GetValues(type).Cast<object?>().Take(1),
        _ when type == typeof(CancellationToken) => [CancellationToken.None],
        _ when type == typeof(Stream) => [new MemoryStream()],
        _ when type == typeof(IBufferWriter<byte>) => [new ArrayBufferWriter<byte>()],
        _ when type == typeof(TextWriter) => [TextWriter.Null],
        _ when type == typeof(Assembly) => [typeof(Converter).Assembly],
        _ when typeof(Delegate).IsAssignableFrom(type) => [Answering(type)],
        _ when HostileValues.ItemOf(type) is { } item => Of(item).Take(1).Select(v => HostileValues.Made(type, item, [v])).Append(HostileValues.Made(type, item, [])),
        _ => Objects(type).Concat(type.IsValueType ? [RuntimeHelpers.GetUninitializedObject(type)] : []),
    };

    // a callback that gives the first sound answer
    private Delegate Answering(Type type)
    {
        MethodInfo invoke = type.GetMethod("Invoke")!;
        Expression answer = invoke.ReturnType == typeof(void) ? Expression.Empty()
            : Expression.Convert(Expression.Constant(Of(invoke.ReturnType).FirstOrDefault()), invoke.ReturnType);
        return Expression.Lambda(type, answer, invoke.GetParameters().Select(p => Expression.Parameter(p.ParameterType))).Compile();
    }
}
