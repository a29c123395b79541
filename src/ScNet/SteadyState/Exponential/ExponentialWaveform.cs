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
        (double Value, double Time) least = (Value(trajectory.Start).Nearest, 0), greatest = least;
        Meet((Value(trajectory.End).Nearest, trajectory.Duration.Nearest));
        (double Time, double Slope) last = (0, 0);
        for (int p = 0; p < trajectory.Times.Length; p++)
        {
            // a derivative of exactly zero at a time decides nothing by itself
            double slope = Slope(slopeRow, trajectory.Vectors[p]);
            if (SignChange.LiesBetween(last.Slope, slope))
            {
                Meet(Turning(slopeRow, last, (trajectory.Times[p], slope)));
            }

            last = slope != 0 ? (trajectory.Times[p], slope) : last;
        }

        return trajectory.TurnSeconds > 0
            ? (-Climb(slopeRow, -1, least), Climb(slopeRow, 1, greatest))
            : (least.Value, greatest.Value);

        void Meet((double Value, double Time) met)
        {
            least = met.Value < least.Value ? met : least;
            greatest = met.Value > greatest.Value ? met : greatest;
        }
    }

    // Of rings that turn many times from one sample to the next the highest turn lies near that of the samples: looked for to both
    // sides in halves, down to a quarter of a turn.
    private double Climb(DoubleDouble[] slopeRow, int sign, (double Value, double Time) from)
    {
        (double best, double centre) = (sign * from.Value, from.Time);
        for (double reach = trajectory.Spacing / 2; reach > trajectory.TurnSeconds / 4; reach /= 2)
        {
            double around = centre;
            foreach (double time in (ReadOnlySpan<double>)[around - reach, around + reach])
            {
                if (time >= 0 && time < trajectory.Duration.Nearest)
                {
                    (double value, double at) = Highest(slopeRow, sign, time);
                    (best, centre) = value > best ? (value, at) : (best, centre);
                }
            }
        }

        return best;
    }

    // the highest value over a turn from a time on, times the sign
    private (double Value, double Time) Highest(DoubleDouble[] slopeRow, int sign, double time)
    {
        (double Value, double Time) best = (double.NegativeInfinity, time);
        (double Time, double Slope) last = (time, 0), before = last, behind = last;
        foreach ((double at, DoubleDouble[] vector) in trajectory.Turn(time))
        {
            (double Time, double Slope) here = (at, Slope(slopeRow, vector));
            double value = sign * Value(vector).Nearest;
            behind = last.Time == best.Time ? here : behind;
            if (value > best.Value)
            {
                (best, before, behind) = ((value, at), last, here);
            }

            last = here;
        }

        if (SignChange.LiesBetween(before.Slope, behind.Slope))
        {
            (double value, double at) = Turning(slopeRow, before, behind);
            best = sign * value > best.Value ? (sign * value, at) : best;
        }

        return best;
    }

    private (double Value, double Time) Turning(DoubleDouble[] slopeRow, (double Time, double Slope) before, (double Time, double Slope) behind)
    {
        double time = SignChange.Find(t => Slope(slopeRow, trajectory.At(t)), before.Time, before.Slope, behind.Time, behind.Slope);
        return (At(time), time);
    }

    private static double Slope(DoubleDouble[] slopeRow, DoubleDouble[] vector) => SmallMatrices.Dot<DoubleDouble>(slopeRow, vector).Nearest;

    private DoubleDouble Value(DoubleDouble[] vector) => SmallMatrices.Dot<DoubleDouble>(row, vector);
}
