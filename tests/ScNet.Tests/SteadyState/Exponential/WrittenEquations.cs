using ScNet.Kernel;
using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>State equations written down number by number, in place of those of a network.</summary>
internal static class WrittenEquations
{
    public static PhaseEquations<T> Phase<T>(int inputs, double[] generator, double[] inputCurrent, double[] output, double[][]? further = null, double[]? resting = null)
        where T : struct, IReal<T> => new(
            inputs,
            Numbers<T>(generator),
            potentials: [],
            isKnown: [],
            Numbers<T>(inputCurrent),
            Numbers<T>(output),
            Array.ConvertAll(further ?? [], Numbers<T>),
            resistors: [],
            Numbers<T>(resting ?? []));

    /// <summary>A phase of which the states alone are looked at.</summary>
    public static PhaseEquations<DoubleDouble> Phase(int states, params double[] generator)
    {
        int width = generator.Length / states;
        return Phase<DoubleDouble>(width - states, generator, new double[width], new double[width]);
    }

    public static StateEquations<T> Of<T>(NetworkStructure structure, double[] duties, params PhaseEquations<T>[] phases)
        where T : struct, IReal<T> => new(structure, new NetworkValues<T>([], [], [], [], Numbers<T>(duties)), ([], []), [], [], phases);

    /// <summary>A structure of so many states, all of which something moves: capacitors that resistors charge from the input.</summary>
    public static NetworkStructure Structure(int states, int further = 0, bool isStiff = false)
    {
        SwitchedLinearNetwork network = new()
        {
            NodeCount = 3 + states,
            Resistors = [new(1, 2), .. Enumerable.Range(0, states).Select(k => new NodePair(1, 3 + k))],
            Capacitors = [.. Enumerable.Range(0, states).Select(k => new NodePair(3 + k, 0))],
            Inductors = [],
            HasWinding = [],
            InputNode = 1,
            OutputNode = 2,
            IsStiff = isStiff,
            FurtherLoads = [.. Enumerable.Repeat(new NodePair(2, 0), further)],
            Closed = [[.. Enumerable.Repeat(true, states + 1)]],
        };
        return NetworkStructure.Of(network, [.. Enumerable.Repeat(1.0, states)], []);
    }

    public static T[] Numbers<T>(double[] values)
        where T : struct, IReal<T> => Array.ConvertAll(values, T.Of);

    public static double[] Doubles<T>(ReadOnlySpan<T> values)
        where T : struct, IReal<T> => Array.ConvertAll(values.ToArray(), v => v.Nearest);
}
