using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Periods without a state, whose charges and errors a test writes down itself.</summary>
internal static class BarePeriods
{
    public static PeriodMap<T> Of<T>(double[][] charges, double[][] errors)
        where T : struct, IReal<T>
    {
        int further = charges.Length - 2;
        SwitchedLinearNetwork network = SmallNetwork.Of(
            4, ["11"], resistors: [(1, 3), (3, 2)], furtherLoads: [.. Enumerable.Repeat((3, 0), further)]);
        NetworkValues<DoubleDouble> values = SmallNetwork.Values([1, 1], [], [], [], [1]);
        PeriodMap<T> map = new(StateEquations<DoubleDouble>.Of(NetworkStructure.Of(network, [], []), values).To(v => T.Of(v.Nearest)));
        T[][] rows = [map.InputCharge, map.Output, .. map.FurtherOutputs];
        double[][] doubts = [map.Error.InputCharge, map.Error.Output, .. map.Error.FurtherOutputs];
        for (int r = 0; r < rows.Length; r++)
        {
            for (int u = 0; u < rows.Length; u++)
            {
                rows[r][u] = T.Of(charges[r][u]);
                doubts[r][u] = errors[r][u];
            }
        }

        return map;
    }

    /// <summary>A square of zeros but for one entry.</summary>
    public static double[][] Single(int size, int row, int column, double value)
    {
        double[][] square = [.. Enumerable.Range(0, size).Select(_ => new double[size])];
        square[row][column] = value;
        return square;
    }
}
