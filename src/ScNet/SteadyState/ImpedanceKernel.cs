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

    // so many modes have their excess kept while a period is evaluated; a whole number of turns
    private const int MostKept = 4 * ModalExcess.Turn;

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

    // by directions, and for each turn of modes whether a direction drives any of them
    private readonly double[] _directionDrive;
    private readonly int _turns;
    private readonly bool[] _isMoved;
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
    private readonly bool _isSymmetric;
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
        _turns = (moving + ModalExcess.Turn - 1) / ModalExcess.Turn;
        _isMoved = new bool[_directions * _turns];
        for (int k = 0; k < _directions; k++)
        {
            for (int r = 0; r < moving; r++)
            {
                double drive = Math.Sqrt(_rate[r]) * _rotation.SlowDrives(k)[r];
                _directionDrive[(k * moving) + r] = drive;
                _isMoved[(k * _turns) + (r / ModalExcess.Turn)] |= drive != 0;
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
        _isSymmetric = !_skew.AsSpan().ContainsAnyExcept(0) && !_skewParticular.AsSpan().ContainsAnyExcept(0);
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
    public double Ohms(double period) => Evaluate(period, withRatios: false, out _);

    /// <summary>What input and output see of each other besides the output impedance, for a period in seconds.</summary>
    /// <remarks>docs/theory/parasitic-capacitances.md. Without directions that take charge from the input both ratios are the ideal one.</remarks>
    public PortRatios Ratios(double period)
    {
        Evaluate(period, withRatios: true, out PortRatios ratios);
        return ratios;
    }

    /// <summary>The output impedance in ohms and all else that input and output see of each other, at the cost of the impedance.</summary>
    public double Ohms(double period, out PortRatios ratios) => Evaluate(period, withRatios: true, out ratios);

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
        Solve(period, reversed, amounts, []);
        DenseRows.AddMultiple(_shift, 1, amounts);
        _rotation.RotateBack(amounts);
    }

    /// <summary>The amount of each direction that one volt at the input drives in open circuit, in coulombs.</summary>
    /// <param name="period">The period in seconds.</param>
    /// <param name="amounts">Receives the amounts.</param>
    /// <param name="reversed">Whether the phases follow one another in the opposite order (the adjoint network).</param>
    public void InputAmounts(double period, Span<double> amounts, bool reversed)
    {
        amounts.Clear();
        if (_input.Length == 0)
        {
            return;
        }

        double settled = Math.Min(period, _settledPeriod);
        Solve(period, reversed, [], amounts);
        for (int m = 0; m < amounts.Length; m++)
        {
            amounts[m] *= settled;
        }

        _rotation.RotateBack(amounts);
    }

    // All that a period decides; the modes' excess is worked out once, where there is room for it.
    private double Evaluate(double period, bool withRatios, out PortRatios ratios)
    {
        int n = _directions;
        bool isSettled = period > _settledPeriod;

        // longer periods would only magnify rounding of the amounts; where nothing has to pass a capacitor the impedance settles too
        double solved = Math.Min(period, _settledPeriod), own = _isTied ? solved : period;
        Span<double> excess = n > 0 && _rate.Length <= MostKept ? stackalloc double[MostKept] : [];
        Span<double> amounts = n <= LargestOnStack ? stackalloc double[n] : new double[n];
        ratios = new PortRatios(_ownInput, _ownInput, 0);
        if (n > 0)
        {
            Span<double> system = n <= LargestOnStack ? stackalloc double[n * n] : new double[n * n];
            Span<double> test = n <= LargestOnStack ? stackalloc double[n] : new double[n];
            Span<double> input = !withRatios || _input.Length == 0 ? [] : n <= LargestOnStack ? stackalloc double[n] : new double[n];
            Form(solved, system, test, reversed: false, excess);
            Negate(test, amounts);
            _input.AsSpan(0, input.Length).CopyTo(input);
            Solve(system, amounts, input);
            if (input.Length > 0)
            {
                ratios = Ratios(solved, test, amounts, input, solved / period);
            }
        }

        double constant = _constant, sum = 0, flows = 1 + _shifted;
        for (int m = 0; m < n; m++)
        {
            flows += Math.Abs(amounts[m]);
            constant += amounts[m] * ((2 * _constantLinear[m]) + DenseRows.Dot(_constantSquare.AsSpan(m * n, n), amounts));
        }

        // a long period would magnify the rounding of modes that in truth are at rest
        double share = isSettled ? Rounding * flows : 0;
        Span<double> turn = stackalloc double[ModalExcess.Turn];
        for (int first = 0; first < _rate.Length; first += ModalExcess.Turn)
        {
            if (excess.IsEmpty || own != solved)
            {
                _excess.Evaluate(own, first, turn);
                sum += Sum(turn, first, amounts, share);
            }
            else
            {
                sum += Sum(excess.Slice(first, ModalExcess.Turn), first, amounts, share);
            }
        }

        return constant + (own * sum);
    }

    // Test is what each direction makes of the particular flow; the particular flow makes of each the same, but for the skew part's sign.
    private PortRatios Ratios(double solved, ReadOnlySpan<double> test, ReadOnlySpan<double> amounts, ReadOnlySpan<double> input, double share)
    {
        double ratio = _ownInput;
        for (int m = 0; m < test.Length; m++)
        {
            ratio -= (test[m] - (2 * solved * _skewParticular[m])) * input[m];
        }

        return new PortRatios(ratio, _ownInput + DenseRows.Dot(_input, amounts), DenseRows.Dot(_input, input) * share);
    }

    // The excess of the modes of one turn, each times the square of its drive.
    private double Sum(ReadOnlySpan<double> excess, int first, ReadOnlySpan<double> amounts, double share)
    {
        int count = Math.Min(ModalExcess.Turn, _rate.Length - first);
        Span<double> drives = stackalloc double[ModalExcess.Turn];
        _drive.AsSpan(first, count).CopyTo(drives);
        for (int k = 0; k < amounts.Length; k++)
        {
            if (IsMoved(k, first))
            {
                DenseRows.AddMultiple(Drives(k, first, count), amounts[k], drives);
            }
        }

        double sum = 0;
        for (int r = 0; r < count; r++)
        {
            double drive = drives[r];
            if (share == 0 || Math.Abs(drive) > share * _scale[first + r])
            {
                sum += excess[r] * drive * drive;
            }
        }

        return sum;
    }

    private bool IsMoved(int direction, int first) => _isMoved[(direction * _turns) + (first / ModalExcess.Turn)];

    private ReadOnlySpan<double> Drives(int direction, int first, int count) =>
        _directionDrive.AsSpan((direction * _rate.Length) + first, count);

    // The amounts of the rotated directions on top of the shifted particular flow, and what the input drives; either may be empty.
    private void Solve(double period, bool reversed, Span<double> amounts, Span<double> input)
    {
        int n = _directions;
        if (n == 0)
        {
            return;
        }

        Span<double> system = n <= LargestOnStack ? stackalloc double[n * n] : new double[n * n];
        Span<double> test = n <= LargestOnStack ? stackalloc double[n] : new double[n];
        Form(Math.Min(period, _settledPeriod), system, test, reversed, []);
        if (!amounts.IsEmpty)
        {
            Negate(test, amounts);
        }

        _input.AsSpan(0, input.Length).CopyTo(input);
        Solve(system, amounts.IsEmpty ? input : amounts, amounts.IsEmpty ? [] : input);
    }

    private void Solve(Span<double> system, Span<double> right, Span<double> other)
    {
        if (_isSymmetric)
        {
            SmallSolver.SolvePositive(system, right, other);
        }
        else
        {
            SmallSolver.SolveScaled(system, right, other);
        }
    }

    private static void Negate(ReadOnlySpan<double> values, Span<double> negated)
    {
        for (int m = 0; m < values.Length; m++)
        {
            negated[m] = -values[m];
        }
    }

    // What each direction makes of every other, by rows, and of the particular flow; of a symmetric matrix the lower half alone.
    private void Form(double period, Span<double> system, Span<double> test, bool reversed, Span<double> excess)
    {
        int n = _directions;
        double skew = reversed ? -period : period;
        for (int m = 0; m < n; m++)
        {
            test[m] = _constantLinear[m] + (skew * _skewParticular[m]);
        }

        _constantSquare.CopyTo(system);
        DenseRows.AddMultiple(_skew, _isSymmetric ? 0 : skew, system);
        Span<double> turn = stackalloc double[ModalExcess.Turn];
        for (int first = 0; first < _rate.Length; first += ModalExcess.Turn)
        {
            Span<double> own = excess.IsEmpty ? turn : excess.Slice(first, ModalExcess.Turn);
            _excess.Evaluate(period, first, own);
            Add(period, own, first, system, test);
        }
    }

    // The part of the modes of one turn.
    private void Add(double period, ReadOnlySpan<double> excess, int first, Span<double> system, Span<double> test)
    {
        int n = _directions, count = Math.Min(ModalExcess.Turn, _rate.Length - first);
        Span<double> weighted = stackalloc double[ModalExcess.Turn];
        weighted = weighted[..count];
        for (int m = 0; m < n; m++)
        {
            if (!IsMoved(m, first))
            {
                continue;
            }

            ReadOnlySpan<double> own = Drives(m, first, count);
            for (int r = 0; r < count; r++)
            {
                weighted[r] = period * excess[r] * own[r];
            }

            test[m] += DenseRows.Dot(weighted, _drive.AsSpan(first, count));
            for (int k = _isSymmetric ? m : n - 1; k >= 0; k--)
            {
                system[(m * n) + k] += IsMoved(k, first) ? DenseRows.Dot(weighted, Drives(k, first, count)) : 0;
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
                charges[1 + k, r] = _directionDrive[(k * _rate.Length) + r] / _rate[r];
            }
        }

        return charges;
    }
}
