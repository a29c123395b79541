namespace ScNet.Numerics;

/// <summary>A real number of some precision, so that one routine serves them all.</summary>
internal interface IReal<T>
    where T : struct, IReal<T>
{
    /// <summary>The largest relative rounding error of one operation.</summary>
    static abstract double Rounding { get; }

    /// <summary>The nearest double.</summary>
    double Nearest { get; }

    /// <summary>Whether it is zero in all that it carries.</summary>
    bool IsZero { get; }

    static abstract T Of(double value);

    static abstract T Sqrt(T value);

    static abstract T operator +(T left, T right);

    static abstract T operator -(T left, T right);

    static abstract T operator -(T value);

    static abstract T operator *(T left, T right);

    static abstract T operator /(T left, T right);
}
