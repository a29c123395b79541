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

    // A drive below this share of the flows that make it up is their rounding.
    private const double Rounding = 4e-15;

    private readonly bool _isTied;
    private readonly int _directions;
    private readonly double _settledPeriod;
    private readonly double[] _rate;
    private readonly double[] _duty;
    private readonly double[] _drive;
    private readonly double[] _directionDrive;
    private readonly double[] _scale;
    private readonly ModalExcess _excess;
    private readonly double _constant;
    private readonly double[] _constantLinear;
    private readonly double[] _constantSquare;
    private readonly double[] _skew;
    private readonly double[] _skewParticular;
    private readonly DirectionRotation _rotation;
    private readonly double[] _shift;
    private readonly double _shifted;
    private readonly double[] _input;
    private readonly double _ownInput;

    private ImpedanceKernel(
        PhaseTerms[] phases,
        double ownInput,
        double[] directionInputs,
        double[] duties,
        bool isTied,
        Func<DenseRows, (double[] Square, double[] Particular)> skew)
    {
        _isTied = isTied;
        _directions = directionInputs.Length;
        int moving = phases.Sum(p => p.Rates.Count(r => r > 0));
        _rate = new double[moving];
        _duty = new double[moving];
        _drive = new double[moving];
        _scale = new double[moving];
        _directionDrive = new double[moving * _directions];
        var linear = new double[_directions];
        var square = new double[_directions * _directions];
        DenseRows slowDrives = new(_directions, moving + _directions);
        int at = 0;
        for (int j = 0; j < phases.Length; j++)
        {
            PhaseTerms modes = phases[j];
            double inverse = 1 / duties[j], norm = 0;
            for (int row = 0; row < modes.Count; row++)
            {
                double charge = modes.Particular(row);
                ReadOnlySpan<double> directions = modes.Directions(row);
                norm += (charge * charge) + DenseRows.Dot(directions, directions);
                _constant += charge * charge * inverse;
                DenseRows.AddMultiple(directions, charge * inverse, linear);
                for (int m = 0; m < _directions; m++)
                {
                    DenseRows.AddMultiple(directions, directions[m] * inverse, square.AsSpan(m * _directions, _directions));
                }
            }

            for (int row = 0; row < modes.Count; row++)
            {
                double rate = modes.Rates[row];
                if (rate > 0)
                {
                    _rate[at] = rate;
                    _duty[at] = duties[j];
                    _drive[at] = (rate * modes.Particular(row)) - (duties[j] * modes.Ramps[row]);
                    _scale[at] = rate * Math.Sqrt(norm);
                    double root = Math.Sqrt(rate);
                    for (int k = 0; k < _directions; k++)
                    {
                        slowDrives[k, at] = root * modes.Directions(row)[k];
                    }

                    at++;
                }
            }
        }

        _excess = new ModalExcess(_rate, _duty);
        _rotation = DirectionRotation.Of(slowDrives, moving);
        _constantLinear = _rotation.Rotate(linear);
        _constantSquare = _rotation.RotateSquare(square);
        for (int k = 0; k < _directions; k++)
        {
            for (int r = 0; r < moving; r++)
            {
                _directionDrive[(r * _directions) + k] = Math.Sqrt(_rate[r]) * _rotation.SlowDrives(k)[r];
            }
        }

        _shift = FastShift.Of(_rotation, _directions, _rate, _drive, _constant);
        for (int k = 0; k < _directions; k++)
        {
            double amount = _shift[k];
            _shifted += Math.Abs(amount);
            _constant += amount * ((2 * _constantLinear[k]) + (amount * _constantSquare[(k * _directions) + k]));
            DenseRows.AddMultiple(_constantSquare.AsSpan(k * _directions, _directions), amount, _constantLinear);
        }

        // a direction that moves no capacitor takes nothing from the input
        _input = Array.TrueForAll(directionInputs, b => b == 0) ? [] : _rotation.Rotate(directionInputs);
        _ownInput = ownInput;
        for (int k = 0; k < _input.Length; k++)
        {
            _input[k] = _rotation.SlowDrives(k).ContainsAnyExcept(0) ? _input[k] : 0;
            _ownInput += _shift[k] * _input[k];
        }

        (_skew, _skewParticular) = skew(Charges(phases));
        double fastest = _rate.DefaultIfEmpty().Max();
        _settledPeriod = moving == 0 ? 0 : SettledTimeConstants / _rate.Where(r => r >= ZeroRate * fastest).Min();
    }

    public int Directions => _directions;

    /// <summary>Prepares the impedance.</summary>
    /// <param name="phases">The terms of each phase.</param>
    /// <param name="ownInput">The charge that the particular flow takes from the input.</param>
    /// <param name="directionInputs">The charge that each free direction takes from the input.</param>
    /// <param name="duties">The duty of each phase.</param>
    /// <param name="isTied">Whether the slow-switching limit is zero, since charge need not pass a capacitor.</param>
    /// <param name="skew">What <see cref="PhaseSkew"/> gives for the charges of the flows in use.</param>
    public static ImpedanceKernel Of(
        PhaseTerms[] phases,
        double ownInput,
        double[] directionInputs,
        double[] duties,
        bool isTied,
        Func<DenseRows, (double[] Square, double[] Particular)> skew) =>
        new(phases, ownInput, directionInputs, duties, isTied, skew);

    /// <summary>The output impedance in ohms for a period in seconds.</summary>
    public double Ohms(double period)
    {
        bool isSettled = period > _settledPeriod;

        // where nothing has to pass a capacitor the impedance settles as the inverse of the period
        period = _isTied && isSettled ? _settledPeriod : period;
        Span<double> amounts = _directions <= LargestOnStack ? stackalloc double[_directions] : new double[_directions];
        Solve(period, amounts, reversed: false);
        double constant = _constant, excess = 0, flows = 1 + _shifted;
        for (int m = 0; m < _directions; m++)
        {
            flows += Math.Abs(amounts[m]);
            constant += amounts[m] * ((2 * _constantLinear[m]) + DenseRows.Dot(_constantSquare.AsSpan(m * _directions, _directions), amounts));
        }

        // a long period would magnify the rounding of modes that in truth are at rest
        double share = isSettled ? Rounding * flows : 0;
        Span<double> turn = stackalloc double[ModalExcess.Turn];
        for (int first = 0; first < _rate.Length; first += turn.Length)
        {
            _excess.Evaluate(period, first, turn);
            excess += Sum(turn, first, amounts, share);
        }

        return constant + (period * excess);
    }

    /// <summary>What input and output see of each other besides the output impedance, for a period in seconds.</summary>
    /// <remarks>docs/theory/parasitic-capacitances.md. Without directions that take charge from the input both ratios are the ideal one.</remarks>
    public PortRatios Ratios(double period)
    {
        int n = _directions;
        if (_input.Length == 0)
        {
            return new PortRatios(_ownInput, _ownInput, 0);
        }

        double settled = Math.Min(period, _settledPeriod);
        Span<double> system = n <= LargestOnStack ? stackalloc double[n * n] : new double[n * n];
        Span<double> own = n <= LargestOnStack ? stackalloc double[n] : new double[n];
        Form(settled, system, own, reversed: false);

        // the column of the input, then the test of the particular flow against it and the input against the particular flow
        Span<double> input = n <= LargestOnStack ? stackalloc double[n] : new double[n];
        _input.CopyTo(input);
        Span<double> right = n <= LargestOnStack ? stackalloc double[n] : new double[n];
        own.CopyTo(right);
        SmallSolver.SolveScaled(system, right, input);
        double ratio = _ownInput, currentRatio = _ownInput;
        for (int m = 0; m < n; m++)
        {
            ratio -= (own[m] - (2 * settled * _skewParticular[m])) * input[m];
            currentRatio -= _input[m] * right[m];
        }

        return new PortRatios(ratio, currentRatio, DenseRows.Dot(_input, input) * (settled / period));
    }

    /// <summary>The largest product of a rate and half the length of its phase; zero where no current changes.</summary>
    /// <param name="period">The period in seconds.</param>
    public double LargestExponent(double period)
    {
        double largest = 0;
        for (int r = 0; r < _rate.Length; r++)
        {
            largest = Math.Max(largest, _rate[r] * _duty[r] * period / 2);
        }

        return largest;
    }

    /// <summary>The amount of each direction at a period in seconds.</summary>
    /// <param name="period">The period in seconds.</param>
    /// <param name="amounts">Receives the amounts.</param>
    /// <param name="reversed">Whether the phases follow one another in the opposite order (the adjoint network).</param>
    public void Amounts(double period, Span<double> amounts, bool reversed)
    {
        Solve(period, amounts, reversed);
        DenseRows.AddMultiple(_shift, 1, amounts);
        _rotation.RotateBack(amounts);
    }

    // The excess of the modes from one on, each times the square of its drive.
    private double Sum(ReadOnlySpan<double> excess, int first, ReadOnlySpan<double> amounts, double share)
    {
        int count = Math.Min(excess.Length, _rate.Length - first), n = amounts.Length;
        ReadOnlySpan<double> drives = _drive.AsSpan(first, count), scales = _scale.AsSpan(first, count);
        ReadOnlySpan<double> directions = _directionDrive.AsSpan(first * n, count * n);
        double sum = 0;
        for (int r = 0; r < count; r++)
        {
            double drive = drives[r];
            if (n > 0)
            {
                drive += DenseRows.Dot(directions.Slice(r * n, n), amounts);
            }

            if (Math.Abs(drive) > share * scales[r])
            {
                sum += excess[r] * drive * drive;
            }
        }

        return sum;
    }

    /// <summary>The amount of each direction that one volt at the input drives in open circuit, in coulombs.</summary>
    /// <param name="period">The period in seconds.</param>
    /// <param name="amounts">Receives the amounts.</param>
    /// <param name="reversed">Whether the phases follow one another in the opposite order (the adjoint network).</param>
    public void InputAmounts(double period, Span<double> amounts, bool reversed)
    {
        int n = _directions;
        amounts.Clear();
        if (_input.Length == 0)
        {
            return;
        }

        double settled = Math.Min(period, _settledPeriod);
        Span<double> system = n <= LargestOnStack ? stackalloc double[n * n] : new double[n * n];
        Form(settled, system, amounts, reversed);
        _input.CopyTo(amounts);
        SmallSolver.SolveScaled(system, amounts);
        for (int m = 0; m < n; m++)
        {
            amounts[m] *= settled;
        }

        _rotation.RotateBack(amounts);
    }

    // The amounts of the rotated directions on top of the shifted particular flow.
    private void Solve(double period, Span<double> amounts, bool reversed)
    {
        int n = _directions;
        if (n == 0)
        {
            return;
        }

        // longer periods would only magnify rounding
        Span<double> system = n <= LargestOnStack ? stackalloc double[n * n] : new double[n * n];
        Form(Math.Min(period, _settledPeriod), system, amounts, reversed);
        for (int m = 0; m < n; m++)
        {
            amounts[m] = -amounts[m];
        }

        SmallSolver.SolveScaled(system, amounts);
    }

    // What each direction makes of every other, by rows, and of the particular flow.
    private void Form(double period, Span<double> system, Span<double> own, bool reversed)
    {
        int n = _directions;
        double sign = reversed ? -1 : 1;
        for (int m = 0; m < n; m++)
        {
            own[m] = _constantLinear[m] + (sign * period * _skewParticular[m]);
            for (int k = 0; k < n; k++)
            {
                system[(m * n) + k] = _constantSquare[(m * n) + k] + (sign * period * _skew[(m * n) + k]);
            }
        }

        Span<double> turn = stackalloc double[ModalExcess.Turn];
        for (int r = 0; r < _rate.Length; r++)
        {
            int inTurn = r % ModalExcess.Turn;
            if (inTurn == 0)
            {
                _excess.Evaluate(period, r, turn);
            }

            double weight = period * turn[inTurn];
            ReadOnlySpan<double> drives = _directionDrive.AsSpan(r * n, n);
            for (int m = 0; m < n; m++)
            {
                double drive = weight * drives[m];
                if (drive != 0)
                {
                    own[m] += drive * _drive[r];
                    DenseRows.AddMultiple(drives, drive, system[(m * n)..((m + 1) * n)]);
                }
            }
        }
    }

    // The shifted particular flow, then the rotated directions, in each exponential mode.
    private DenseRows Charges(PhaseTerms[] phases)
    {
        DenseRows charges = new(1 + _directions, _rate.Length);
        double[] ramps = [.. phases.SelectMany(p => Enumerable.Range(0, p.Count).Where(r => p.Rates[r] > 0).Select(r => p.Ramps[r]))];
        for (int r = 0; r < _rate.Length; r++)
        {
            charges[0, r] = (_drive[r] + (_duty[r] * ramps[r])) / _rate[r];
            for (int k = 0; k < _directions; k++)
            {
                charges[1 + k, r] = _directionDrive[(r * _directions) + k] / _rate[r];
            }
        }

        return charges;
    }
}
