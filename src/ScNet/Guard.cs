namespace ScNet;

/// <summary>Checks of arguments that more than one type makes.</summary>
internal static class Guard
{
    /// <summary>The smallest value that counts as positive, in any SI unit.</summary>
    public const double MinimumValue = 1e-60;

    /// <summary>The largest value, in any SI unit.</summary>
    public const double MaximumValue = 1e60;

    /// <summary>Requires a list of the given length with finite, positive (or zero, where allowed) values; null passes.</summary>
    public static void Values(IReadOnlyList<double>? values, int length, bool allowZero, string parameterName)
    {
        if (values is null)
        {
            return;
        }

        if (values.Count != length)
        {
            throw new ArgumentException($"Expected {length} values, one per element, but got {values.Count}.", parameterName);
        }

        for (int i = 0; i < length; i++)
        {
            if (!IsInRange(values[i], allowZero))
            {
                throw new ArgumentException($"Expected a {(allowZero ? "value of zero or" : "positive value")} from {MinimumValue} to {MaximumValue} at index {i}, but got {values[i]}.", parameterName);
            }
        }
    }

    /// <summary>
    /// Whether a value is finite and positive, or zero where allowed, and within bounds so wide that no
    /// component or frequency meets them, but products of a few values stay finite.
    /// </summary>
    public static bool IsInRange(double value, bool allowZero) =>
        (allowZero && value == 0) || (value >= MinimumValue && value <= MaximumValue);

    /// <summary>Gives the value back, or throws where it is out of range.</summary>
    public static double InRange(double value, bool allowZero, string parameterName) => IsInRange(value, allowZero)
        ? value
        : throw new ArgumentOutOfRangeException(parameterName, value, $"Expected a {(allowZero ? "value of zero or" : "positive value")} from {MinimumValue} to {MaximumValue}.");

    /// <summary>Gives a count back, or throws where it is below one.</summary>
    public static int AtLeastOne(int value, string parameterName)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(value, 1, parameterName);
        return value;
    }

    /// <summary>Gives a number of things to be made back, or throws where it is below the least or above the most, of which nobody would wait for the end.</summary>
    public static int Count(int value, int least, int most, string parameterName)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(value, least, parameterName);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(value, most, parameterName);
        return value;
    }

    /// <summary>Gives a name back, or throws where it is null or empty, or has half of a character, which no document can hold.</summary>
    public static string Named(string value, string parameterName)
    {
        ArgumentException.ThrowIfNullOrEmpty(value, parameterName);
        for (int i = 0; i < value.Length; i++)
        {
            if (char.IsSurrogate(value[i]) && !(i + 1 < value.Length && char.IsSurrogatePair(value[i], value[++i])))
            {
                throw new ArgumentException($"Expected characters, but the name {Quoted.Name(value)} has half of one (a surrogate alone). Remove it.", parameterName);
            }
        }

        return value;
    }

    /// <summary>A list of its own of the items of one that is given, or throws where that or an item of it is null.</summary>
    public static IReadOnlyList<T> Copy<T>(IEnumerable<T> items, string parameterName)
    {
        ArgumentNullException.ThrowIfNull(items, parameterName);
        T[] copy = [.. items];
        return Array.Exists(copy, i => i is null) ? throw new ArgumentException("Expected no null among the items.", parameterName) : Array.AsReadOnly(copy);
    }

    /// <summary>The same for a list that may be null.</summary>
    public static IReadOnlyList<T>? CopyIfAny<T>(IEnumerable<T>? items, string parameterName) => items is null ? null : Copy(items, parameterName);

    /// <summary>Gives a value back, or throws where it is null.</summary>
    public static T Given<T>(T value, string parameterName)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(value, parameterName);
        return value;
    }

    /// <summary>Gives a list back whose items have different names, or throws.</summary>
    public static IReadOnlyList<T> Distinct<T>(IReadOnlyList<T> items, Func<T, string> nameOf, bool isEmptyAllowed, string parameterName)
    {
        ArgumentNullException.ThrowIfNull(items, parameterName);
        if (items.Count == 0 && !isEmptyAllowed)
        {
            throw new ArgumentException("Expected at least one, but got none.", parameterName);
        }

        HashSet<string> names = [];
        return Copy(items, parameterName).FirstOrDefault(i => !names.Add(nameOf(i))) is { } second
            ? throw new ArgumentException($"Expected different names, but {Quoted.Name(nameOf(second))} is there twice.", parameterName)
            : items;
    }
}
