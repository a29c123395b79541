using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// All of the output impedance that does not depend on frequency: the drives of the exponential modes, what constant
/// currents dissipate, and the equations of the directions, which are rotated and the particular flow shifted first.
/// </summary>
/// <remarks>Symbols and equations: docs/theory/output-impedance.md. Charges are per unit of charge into the load.</remarks>
internal sealed class ImpedanceTerms
{
    // Beyond this many of the slowest time constants the amounts have settled to rounding.
    private const double SettledTimeConstants = 1e13;

    // Beyond this many of the fastest the rounding of directions that drive no mode would count, which is squared.
    private const double LargestExponent = 1e25;

    // Slower rates than this fraction of the fastest are the rounding of a rate of zero.
    private const double ZeroRate = 1e-27;

    private ImpedanceTerms(
        PhaseTerms[] phases,
        double ownInput,
        double[] directionInputs,
        double[] duties,
        Func<DenseRows, (double[] Square, double[] Particular)> skew)
    {
        Directions = directionInputs.Length;
        int moving = phases.Sum(p => p.Rates.Count(r => r > 0));
        double[] rates = new double[moving], phaseDuties = new double[moving], drives = new double[moving], scales = new double[moving];
        var ramps = new double[moving];
        var linear = new double[Directions];
        var square = new double[Directions * Directions];
        DenseRows slowDrives = new(Directions, moving + Directions);
        int at = 0;
        for (int j = 0; j < phases.Length; j++)
        {
            PhaseTerms modes = phases[j];
            double norm = AddConstants(modes, 1 / duties[j], linear, square);
            for (int row = 0; row < modes.Count; row++)
            {
                double rate = modes.Rates[row];
                if (rate > 0)
                {
                    rates[at] = rate;
                    phaseDuties[at] = duties[j];
                    ramps[at] = modes.Ramps[row];
                    drives[at] = (rate * modes.Particular(row)) - (duties[j] * modes.Ramps[row]);
                    scales[at] = rate * Math.Sqrt(norm);
                    double root = Math.Sqrt(rate);
                    for (int k = 0; k < Directions; k++)
                    {
                        slowDrives[k, at] = root * modes.Directions(row)[k];
                    }

                    at++;
                }
            }
        }

        Rotation = DirectionRotation.Of(slowDrives, moving);
        ConstantLinear = Rotation.Rotate(linear);
        ConstantSquare = Rotation.RotateSquare(square);
        Shift = FastShift.Of(Rotation, Directions, rates, drives, Constant);
        ShiftConstants();
        Modes = new ModeDrives(rates, phaseDuties, drives, scales, Rotation, Directions);
        (OwnInput, Input) = Inputs(ownInput, directionInputs);
        (Skew, SkewParticular) = skew(Modes.Charges(ramps, Directions));
        double fastest = rates.DefaultIfEmpty().Max();
        SettledPeriod = moving == 0 ? 0 : Math.Min(SettledTimeConstants / rates.Where(r => r >= ZeroRate * fastest).Min(), LargestExponent / fastest);
    }

    public int Directions { get; }

    public ModeDrives Modes { get; }

    public DirectionRotation Rotation { get; }

    /// <summary>By how much of each direction the particular flow was shifted.</summary>
    public double[] Shift { get; }

    /// <summary>The sum of the magnitudes of <see cref="Shift"/>.</summary>
    public double Shifted { get; private set; }

    /// <summary>What the particular flow dissipates as constant currents, and what it makes with each direction and these of one another, by rows.</summary>
    public double Constant { get; private set; }

    public double[] ConstantLinear { get; }

    public double[] ConstantSquare { get; }

    /// <summary>The skew part of the equations, by rows; may be empty where it is zero.</summary>
    public double[] Skew { get; }

    /// <summary>The skew part of the particular flow.</summary>
    public double[] SkewParticular { get; }

    /// <summary>The charge that each direction takes from the input; empty where none does.</summary>
    public double[] Input { get; }

    /// <summary>The charge that the shifted particular flow takes from the input.</summary>
    public double OwnInput { get; }

    /// <summary>Beyond this period in seconds the amounts do not change any more.</summary>
    public double SettledPeriod { get; }

    /// <summary>Works the terms out.</summary>
    /// <param name="phases">The terms of each phase.</param>
    /// <param name="ownInput">The charge that the particular flow takes from the input.</param>
    /// <param name="directionInputs">The charge that each free direction takes from the input.</param>
    /// <param name="duties">The duty of each phase.</param>
    /// <param name="skew">What <see cref="PhaseSkew"/> gives for the charges of the flows in use.</param>
    public static ImpedanceTerms Of(
        PhaseTerms[] phases,
        double ownInput,
        double[] directionInputs,
        double[] duties,
        Func<DenseRows, (double[] Square, double[] Particular)> skew) =>
        new(phases, ownInput, directionInputs, duties, skew);

    // What the modes of a phase dissipate as constant currents; returns the sum of squares of all charges.
    private double AddConstants(PhaseTerms modes, double inverse, double[] linear, double[] square)
    {
        double norm = 0;
        for (int row = 0; row < modes.Count; row++)
        {
            double charge = modes.Particular(row);
            ReadOnlySpan<double> directions = modes.Directions(row);
            norm += (charge * charge) + DenseRows.Dot(directions, directions);
            Constant += charge * charge * inverse;
            DenseRows.AddMultiple(directions, charge * inverse, linear);
            for (int m = 0; m < directions.Length; m++)
            {
                DenseRows.AddMultiple(directions, directions[m] * inverse, square.AsSpan(m * Directions, Directions));
            }
        }

        return norm;
    }

    private void ShiftConstants()
    {
        for (int k = 0; k < Directions; k++)
        {
            double amount = Shift[k];
            Shifted += Math.Abs(amount);
            Constant += amount * ((2 * ConstantLinear[k]) + (amount * ConstantSquare[(k * Directions) + k]));
            DenseRows.AddMultiple(ConstantSquare.AsSpan(k * Directions, Directions), amount, ConstantLinear);
        }
    }

    // a direction that moves no capacitor takes nothing from the input
    private (double Own, double[] Input) Inputs(double ownInput, double[] directionInputs)
    {
        double[] input = Array.TrueForAll(directionInputs, b => b == 0) ? [] : Rotation.Rotate(directionInputs);
        for (int k = 0; k < input.Length; k++)
        {
            input[k] = Rotation.SlowDrives(k).ContainsAnyExcept(0) ? input[k] : 0;
            ownInput += Shift[k] * input[k];
        }

        return (ownInput, input);
    }
}
