using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>A signal that is a row over state and inputs, over one phase.</summary>
internal sealed class ExponentialWaveform(PhaseTrajectory trajectory, DoubleDouble[] row) : PhaseWaveform
{
    public override double Change => (Value(trajectory.End) - Value(trajectory.Start)).Nearest;

    public override double Mean() => (Value(trajectory.Integral) / trajectory.Duration).Nearest;

    public override double SquareIntegral()
    {
        DoubleDouble sum = default;
        int width = row.Length;
        for (int r = 0; r < width; r++)
        {
            sum += row[r] * SmallMatrices.Dot<DoubleDouble>(trajectory.Products.AsSpan(r * width, width), row);
        }

        // of a signal that is nothing but rounding
        return Math.Max(0, sum.Nearest);
    }

    public override double At(double time) => Value(trajectory.At(time)).Nearest;

    public override (double Least, double Greatest) Extremes()
    {
        DoubleDouble[] slopeRow = trajectory.Derivative(row);
        double least = Math.Min(Value(trajectory.Start).Nearest, Value(trajectory.End).Nearest);
        double greatest = Math.Max(Value(trajectory.Start).Nearest, Value(trajectory.End).Nearest);
        (int Point, double Slope) last = (0, 0);
        for (int p = 0; p < trajectory.Times.Length; p++)
        {
            // a derivative of exactly zero at a time decides nothing by itself
            double slope = SmallMatrices.Dot<DoubleDouble>(slopeRow, trajectory.Vectors[p]).Nearest;
            if (slope * last.Slope < 0)
            {
                double value = At(SignChange.Find(t => SmallMatrices.Dot<DoubleDouble>(slopeRow, trajectory.At(t)).Nearest, trajectory.Times[last.Point], last.Slope, trajectory.Times[p], slope));
                (least, greatest) = (Math.Min(least, value), Math.Max(greatest, value));
            }

            last = slope != 0 ? (p, slope) : last;
        }

        return (least, greatest);
    }

    private DoubleDouble Value(DoubleDouble[] vector) => SmallMatrices.Dot<DoubleDouble>(row, vector);
}
