using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>The error of a stiff output's figures against how far they move when a charge does.</summary>
public sealed class MultiPortErrorsTests
{
    private const double Step = 1e-6;

    public static TheoryData<int, int, int> Charges
    {
        get
        {
            TheoryData<int, int, int> data = [];
            foreach (int seed in Enumerable.Range(1, 6))
            {
                foreach (int entry in Enumerable.Range(0, 9))
                {
                    data.Add(seed, entry / 3, entry % 3);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Charges))]
    public void The_error_is_by_how_much_of_its_scale_a_figure_moves(int seed, int row, int column)
    {
        Random random = new(seed);
        double[][] charges = [.. Enumerable.Range(0, 3).Select(_ => (double[])[.. Enumerable.Range(0, 3).Select(_ => random.NextDouble() - 0.5)])];
        MultiPortValues found = Of(charges, BarePeriods.Single(3, row, column, Step));
        charges[row][column] += Step;
        MultiPortValues above = Of(charges, BarePeriods.Single(3, 0, 0, 0));
        charges[row][column] -= 2 * Step;
        MultiPortValues below = Of(charges, BarePeriods.Single(3, 0, 0, 0));

        double ratio = found.Ratios.Concat(found.CurrentRatios).Max(Math.Abs);
        double[] own = [Math.Abs(found.Ohms[0]), Math.Abs(found.Ohms[3])];
        double worst = Moved(below.InputSiemens, above.InputSiemens) / Math.Max(Math.Abs(found.InputSiemens), ratio * ratio / own.Max());
        for (int i = 0; i < 2; i++)
        {
            worst = Math.Max(worst, Moved(below.Ratios[i], above.Ratios[i]) / ratio);
            worst = Math.Max(worst, Moved(below.CurrentRatios[i], above.CurrentRatios[i]) / ratio);
            for (int k = 0; k < 2; k++)
            {
                worst = Math.Max(worst, Moved(below.Ohms[(2 * i) + k], above.Ohms[(2 * i) + k]) / Math.Sqrt(own[i] * own[k]));
            }
        }

        Assert.Equal(worst, found.RelativeError, 1e-3 * worst);
    }

    private static double Moved(double below, double above) => Math.Abs(above - below) / 2;

    private static MultiPortValues Of(double[][] charges, double[][] errors) =>
        MultiPortValues.Of(BarePeriods.Of<PlainReal>(charges, errors), PlainReal.Of(0.5), isStiff: true);
}
