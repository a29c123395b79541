using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// The output impedance as a function of frequency, with everything that does not depend on frequency
/// worked out: one term per exponential mode and phase, and a few unknown amounts.
/// </summary>
/// <remarks>Symbols and equations: docs/theory/output-impedance.md. Charges are per unit of charge into the load.</remarks>
internal sealed class ImpedanceKernel
{
    private const int LargestOnStack = 32;

    // Beyond this many of the slowest time constants the amounts have settled to rounding.
    private const double SettledTimeConstants = 1e13;

    // Slower rates than this fraction of the fastest are the rounding of a rate of zero.
    private const double ZeroRate = 1e-27;

    private readonly int _directions;
    private readonly double _settledPeriod;
    private readonly double[] _rate;
    private readonly double[] _duty;
    private readonly double[] _drive;
    private readonly double[] _directionDrive;
    private readonly double _constant;
    private readonly double[] _constantLinear;
    private readonly double[] _constantSquare;
    private readonly double[] _skew;
    private readonly double[] _skewParticular;

    private ImpedanceKernel(PhaseModes[] phases, double[] duties)
    {
        int directions = phases[0].Directions;
        _directions = directions;
        _constantLinear = new double[directions];
        _constantSquare = new double[directions * directions];
        int moving = phases.Sum(p => p.Rates.Count(r => r > 0));
        _rate = new double[moving];
        _duty = new double[moving];
        _drive = new double[moving];
        _directionDrive = new double[moving * directions];
        int at = 0;
        for (int j = 0; j < phases.Length; j++)
        {
            PhaseModes modes = phases[j];
            for (int row = 0; row < modes.ModeCount; row++)
            {
                double charge = modes.Particular(row), inverse = 1 / duties[j];
                _constant += charge * charge * inverse;
                for (int m = 0; m < directions; m++)
                {
                    double own = modes.Direction(row, m) * inverse;
                    _constantLinear[m] += own * charge;
                    for (int k = 0; k < directions; k++)
                    {
                        _constantSquare[(m * directions) + k] += own * modes.Direction(row, k);
                    }
                }

                if (modes.Rates[row] > 0)
                {
                    _rate[at] = modes.Rates[row];
                    _duty[at] = duties[j];
                    _drive[at] = (modes.Rates[row] * charge) - (duties[j] * modes.Ramps[row]);
                    for (int k = 0; k < directions; k++)
                    {
                        _directionDrive[(at * directions) + k] = modes.Rates[row] * modes.Direction(row, k);
                    }

                    at++;
                }
            }
        }

        (_skew, _skewParticular) = Skew(phases, duties);
        double fastest = _rate.DefaultIfEmpty().Max();
        _settledPeriod = moving == 0 ? 0 : SettledTimeConstants / _rate.Where(r => r >= ZeroRate * fastest).Min();
    }

    public int Directions => _directions;

    public static ImpedanceKernel Of(PhaseModes[] phases, double[] duties) => new(phases, duties);

    /// <summary>The output impedance in ohms for a period in seconds.</summary>
    public double Ohms(double period)
    {
        Span<double> amounts = _directions <= LargestOnStack ? stackalloc double[_directions] : new double[_directions];
        Amounts(period, amounts, reversed: false);
        double constant = _constant, excess = 0;
        for (int m = 0; m < _directions; m++)
        {
            constant += 2 * amounts[m] * _constantLinear[m];
            for (int k = 0; k < _directions; k++)
            {
                constant += amounts[m] * amounts[k] * _constantSquare[(m * _directions) + k];
            }
        }

        for (int r = 0; r < _rate.Length; r++)
        {
            double drive = _drive[r] + DenseRows.Dot(_directionDrive.AsSpan(r * _directions, _directions), amounts);
            excess += ModalFunctions.Excess(_rate[r], _duty[r] * period) * drive * drive;
        }

        return constant + (period * excess);
    }

    /// <summary>The amount of each direction at a period in seconds.</summary>
    /// <param name="period">The period in seconds.</param>
    /// <param name="amounts">Receives the amounts.</param>
    /// <param name="reversed">Whether the phases follow one another in the opposite order (the adjoint network).</param>
    public void Amounts(double period, Span<double> amounts, bool reversed)
    {
        int n = _directions;
        if (n == 0)
        {
            return;
        }

        // longer periods would only magnify the rounding of directions that move no capacitor
        period = Math.Min(period, _settledPeriod);
        Span<double> system = n <= LargestOnStack ? stackalloc double[n * n] : new double[n * n];
        double sign = reversed ? -1 : 1;
        for (int m = 0; m < n; m++)
        {
            amounts[m] = -_constantLinear[m] - (sign * period * _skewParticular[m]);
            for (int k = 0; k < n; k++)
            {
                system[(m * n) + k] = _constantSquare[(m * n) + k] + (sign * period * _skew[(m * n) + k]);
            }
        }

        for (int r = 0; r < _rate.Length; r++)
        {
            double weight = period * ModalFunctions.Excess(_rate[r], _duty[r] * period);
            ReadOnlySpan<double> drives = _directionDrive.AsSpan(r * n, n);
            for (int m = 0; m < n; m++)
            {
                double own = weight * drives[m];
                amounts[m] -= own * _drive[r];
                for (int k = 0; k < n; k++)
                {
                    system[(m * n) + k] += own * drives[k];
                }
            }
        }

        SmallSolver.Solve(system, amounts);
    }

    // Σ_j (Bᵀz)^j · (what has changed of the states up to the middle of phase j, negated); nothing for two phases.
    private (double[] Square, double[] Particular) Skew(PhaseModes[] phases, double[] duties)
    {
        var square = new double[_directions * _directions];
        var particular = new double[_directions];
        if (phases.Length == 2 || _directions == 0)
        {
            return (square, particular);
        }

        // column 0: the particular flow; the others: the directions
        int columns = 1 + _directions, states = phases[0].States;
        var before = new double[columns][];
        for (int c = 0; c < columns; c++)
        {
            before[c] = new double[states];
        }

        for (int j = 0; j < phases.Length; j++)
        {
            double[][] change = [.. Enumerable.Range(0, columns).Select(c => StateCharge(phases[j], c, c == 0 ? duties[j] : 0))];
            for (int m = 0; m < _directions; m++)
            {
                double[] own = change[1 + m];
                for (int c = 0; c < columns; c++)
                {
                    double sum = DenseRows.Dot(own, before[c]) + (0.5 * DenseRows.Dot(own, change[c]));
                    if (c == 0)
                    {
                        particular[m] += sum;
                    }
                    else
                    {
                        square[(m * _directions) + c - 1] += sum;
                    }
                }
            }

            for (int c = 0; c < columns; c++)
            {
                for (int x = 0; x < states; x++)
                {
                    before[c][x] += change[c][x];
                }
            }
        }

        return (square, particular);
    }

    // Bᵀq - D J: by how much a flow lowers the states in one phase.
    private static double[] StateCharge(PhaseModes modes, int column, double duty)
    {
        var charge = new double[modes.States];
        for (int row = 0; row < modes.ModeCount; row++)
        {
            if (row < modes.FirstMode)
            {
                // what node groups demand has been taken out of the load's drive already
                continue;
            }

            double amount = column == 0 ? modes.Particular(row) : modes.Direction(row, column - 1);
            ReadOnlySpan<double> coupling = modes.Coupling(row);
            for (int x = 0; x < charge.Length; x++)
            {
                charge[x] += amount * coupling[x];
            }
        }

        for (int x = 0; x < charge.Length; x++)
        {
            charge[x] -= duty * modes.Load[x];
        }

        return charge;
    }
}
