using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>The values of a network in one number type; index as in <see cref="SwitchedLinearNetwork"/>.</summary>
internal sealed record NetworkValues<T>(T[] Ohms, T[] Farads, T[] Henries, T[] WindingOhms, T[] Duties)
    where T : struct, IReal<T>
{
    /// <summary>Per conducting diode: its forward voltage per volt of input.</summary>
    public T[] DiodeRatios { get; init; } = [];

    /// <summary>The same values in another number type.</summary>
    public NetworkValues<TOther> To<TOther>(System.Converter<T, TOther> convert)
        where TOther : struct, IReal<TOther> => new(
            Array.ConvertAll(Ohms, convert),
            Array.ConvertAll(Farads, convert),
            Array.ConvertAll(Henries, convert),
            Array.ConvertAll(WindingOhms, convert),
            Array.ConvertAll(Duties, convert))
        {
            DiodeRatios = Array.ConvertAll(DiodeRatios, convert),
        };
}
