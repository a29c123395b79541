using System.Buffers;
using System.Collections;
using System.Globalization;
using System.Linq.Expressions;
using System.Numerics;
using System.Reflection;
using System.Runtime.CompilerServices;
using Fractions;

namespace ScNet.Testing;

/// <summary>An argument that nobody should give.</summary>
/// <param name="Name">What it is, for messages.</param>
/// <param name="Make">Makes it, since a stream or an enumeration serves once.</param>
/// <param name="Allows">An exception that it may bring about beside those of arguments; null for none.</param>
internal sealed record HostileValue(string Name, Func<object?> Make, Type? Allows = null);

/// <summary>What a callback or a stream of a test throws, which nobody may swallow or wrap.</summary>
internal sealed class HostileException : Exception;

/// <summary>Hostile arguments of every type of parameter.</summary>
/// <param name="accepted">Objects that were made of hostile arguments and not refused, by their type.</param>
internal sealed class HostileValues(Func<Type, IEnumerable<object>> accepted)
{
    // long enough to show a stack or a square, and short enough for every member of every type
    private const int LongText = 20_000, LongList = 3_000;

    /// <summary>The hostile values of a parameter.</summary>
    public IEnumerable<HostileValue> Of(ParameterInfo parameter)
    {
        Type type = parameter.ParameterType.IsByRef ? parameter.ParameterType.GetElementType()! : parameter.ParameterType;
        bool isPath = type == typeof(string) && parameter.Name is { } name
            && (name.Contains("path", StringComparison.OrdinalIgnoreCase) || name.Contains("folder", StringComparison.OrdinalIgnoreCase) || name is "output" or "file");
        return isPath ? Paths() : Of(type);
    }

    // nothing that could be written: a name of blanks is a file to some systems
    private static IEnumerable<HostileValue> Paths() =>
    [
        new("null", () => null), new("\"\"", () => string.Empty), new("a path with a zero", () => "a\0b"),
        new("a path to nothing", () => Path.Combine(Path.GetTempPath(), "none", "of", "these"), typeof(IOException)),
        new("a folder", Path.GetTempPath, typeof(IOException)),
    ];

    private IEnumerable<HostileValue> Of(Type type)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner)
        {
            return Of(inner).Prepend(new HostileValue("null", () => null));
        }

        IEnumerable<HostileValue> values = type switch
        {
            _ when type == typeof(double) => Values<double>(double.NaN, double.PositiveInfinity, double.NegativeInfinity, -0.0, 0, -1, double.Epsilon, 1e-310, double.MaxValue, double.MinValue, 1e300, 1e-300),
            _ when type == typeof(int) => Values(int.MinValue, -1, 0, int.MaxValue),
            _ when type == typeof(long) => Values(long.MinValue, -1L, 0L, long.MaxValue),
            _ when type == typeof(bool) => Values(true, false),
            _ when type == typeof(string) =>
            [
                new("null", () => null), new("\"\"", () => string.Empty), new("a blank", () => " "), new("a zero", () => "\0"), new("half a character", () => "\uD800"),
                new("a mark of direction", () => "\u202E"), new("a long text", () => new string('(', LongText)), new("a number", () => "1e999"), new("braces", () => "{0}{"),
            ],
            _ when type == typeof(Fraction) => Values(default, Fraction.Zero, Fraction.MinusOne, new Fraction(1, 0), new Fraction(-1, 0), new Fraction(0, 0), new Fraction(2, -4, false), new Fraction(BigInteger.Pow(10, 700), 3), new Fraction(1, BigInteger.Pow(10, 700))),
            _ when type == typeof(BigInteger) => Values(BigInteger.Zero, BigInteger.MinusOne, BigInteger.Pow(10, 700)),
            _ when type.IsEnum => [new("an unknown value", () => Enum.ToObject(type, 99)), new("a negative value", () => Enum.ToObject(type, -1))],
            _ when type == typeof(CancellationToken) => [new("a cancelled token", () => new CancellationToken(canceled: true), typeof(OperationCanceledException))],
            _ when type == typeof(Stream) =>
            [
                new("null", () => null), new("a disposed stream", Disposed, typeof(ObjectDisposedException)), new("a stream that throws", () => new ThrowingStream(), typeof(HostileException)),
                new("a stream that fails", () => new FailingStream(), typeof(IOException)), new("zeros", () => new MemoryStream(new byte[1000])), new("no text", () => new MemoryStream([0xff, 0xfe, 0xc0])),
            ],
            _ when type == typeof(TextWriter) => [new("null", () => null)],
            _ when type == typeof(IProgress<double>) => [new("null", () => null), new("a progress that throws", () => new ThrowingProgress(), typeof(HostileException))],
            _ when type == typeof(IBufferWriter<byte>) => [new("null", () => null)],
            _ when type == typeof(IFormatProvider) => [new("null", () => null), new("an odd culture", () => OddCulture())],
            _ when type == typeof(object) => [new("null", () => null), new("an object", () => new object()), new("a text", () => "text"), new("not a number", () => double.NaN)],
            _ when typeof(Delegate).IsAssignableFrom(type) => [new("null", () => null), new("a callback that throws", () => Throwing(type), typeof(HostileException))],
            _ when ItemOf(type) is { } item => Lists(type, item),
            _ when type.IsValueType => [new("default", () => RuntimeHelpers.GetUninitializedObject(type))],
            _ => [new("null", () => null)],
        };
        return values.Concat(accepted(type).Select(a => new HostileValue($"a {type.Name} of hostile values", () => a)));
    }

    private IEnumerable<HostileValue> Lists(Type list, Type item)
    {
        yield return new("null", () => null);
        yield return new("no items", () => Made(list, item, []));
        foreach (HostileValue value in Of(item).Take(12))
        {
            yield return new($"[{value.Name}]", () => Made(list, item, [value.Make()]), value.Allows);
            if (value.Name == "null")
            {
                yield return new("many nulls", () => Made(list, item, Enumerable.Repeat<object?>(null, LongList)));
            }
        }

        if (item.IsValueType)
        {
            yield return new("a long list", () => Made(list, item, Enumerable.Repeat<object?>(RuntimeHelpers.GetUninitializedObject(item), LongList)));
        }

        if (list.IsGenericType && list.GetGenericTypeDefinition() == typeof(IEnumerable<>))
        {
            yield return new("items that throw", () => typeof(HostileValues).GetMethod(nameof(ThrowingItems), BindingFlags.NonPublic | BindingFlags.Static)!.MakeGenericMethod(item).Invoke(null, null), typeof(HostileException));
        }
    }

    /// <summary>The type of the items of a type of lists that an array can stand for; null for any other type.</summary>
    public static Type? ItemOf(Type type) => type.IsArray && type.GetArrayRank() == 1 ? type.GetElementType()
        : type.IsGenericType && type.IsInterface && typeof(IEnumerable).IsAssignableFrom(type) && type.GetGenericArguments() is [var item] && type.IsAssignableFrom(item.MakeArrayType()) ? item
        : null;

    /// <summary>An array of items, for a parameter of a type of lists.</summary>
    public static object Made(Type list, Type item, IEnumerable<object?> items)
    {
        object?[] all = [.. items];
        Array array = Array.CreateInstance(item, all.Length);
        for (int i = 0; i < all.Length; i++)
        {
            array.SetValue(all[i], i);
        }

        return list.IsInstanceOfType(array) ? array : throw new ArgumentException($"Expected a list that an array can be, but got {list}.", nameof(list));
    }

    /// <summary>A culture with separators and signs of its own.</summary>
    public static CultureInfo OddCulture()
    {
        CultureInfo culture = (CultureInfo)CultureInfo.GetCultureInfo("de-DE").Clone();
        culture.NumberFormat.NumberDecimalSeparator = "~";
        culture.NumberFormat.NumberGroupSeparator = "=";
        culture.NumberFormat.NegativeSign = "minus";
        culture.NumberFormat.PositiveSign = "plus";
        culture.NumberFormat.NaNSymbol = "none";
        culture.TextInfo.ListSeparator = "|";
        return culture;
    }

    private static IEnumerable<HostileValue> Values<T>(params T[] values) =>
        values.Select(v => new HostileValue(string.Create(CultureInfo.InvariantCulture, $"{(v is Fraction f ? $"{f.Numerator.GetBitLength()} bits over {f.Denominator.GetBitLength()}" : v)}"), () => v));

    private static MemoryStream Disposed()
    {
        MemoryStream stream = new();
        stream.Dispose();
        return stream;
    }

    private static Delegate Throwing(Type type)
    {
        MethodInfo invoke = type.GetMethod("Invoke")!;
        return Expression.Lambda(
            type,
            Expression.Throw(Expression.New(typeof(HostileException)), invoke.ReturnType),
            invoke.GetParameters().Select(p => Expression.Parameter(p.ParameterType))).Compile();
    }

    private static IEnumerable<T> ThrowingItems<T>()
    {
        foreach (T item in Array.Empty<T>())
        {
            yield return item;
        }

        throw new HostileException();
    }

    private sealed class ThrowingProgress : IProgress<double>
    {
        public void Report(double value) => throw new HostileException();
    }

    private sealed class ThrowingStream : MemoryStream
    {
        public override int Read(byte[] buffer, int offset, int count) => throw new HostileException();

        public override int Read(Span<byte> buffer) => throw new HostileException();

        public override void Write(byte[] buffer, int offset, int count) => throw new HostileException();

        public override void Write(ReadOnlySpan<byte> buffer) => throw new HostileException();
    }

    private sealed class FailingStream : MemoryStream
    {
        public override int Read(byte[] buffer, int offset, int count) => throw new IOException("fails");

        public override int Read(Span<byte> buffer) => throw new IOException("fails");

        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("fails");

        public override void Write(ReadOnlySpan<byte> buffer) => throw new IOException("fails");
    }
}
