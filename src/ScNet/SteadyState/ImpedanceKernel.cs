using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// The output impedance as a function of the period: one term per exponential mode and phase, and a few unknown amounts
/// that are solved for.
/// </summary>
/// <remarks>Symbols and equations: docs/theory/output-impedance.md. Charges are per unit of charge into the load.</remarks>
internal sealed class ImpedanceKernel
{
    // numbers: the equations of 32 directions, and three values for each
    private const int MostOnStack = 32 * (32 + 3);

    // so many modes have their excess kept while a period is evaluated; a whole number of turns
    private const int MostKept = 4 * ModalExcess.Turn;

    // A drive below this share of the flows that make it up is their rounding.
    private const double Rounding = 4e-15;

    private readonly bool _isTied;
    private readonly ImpedanceTerms _terms;
    private readonly ModeDrives _modes;
    private readonly double[] _input;
    private readonly bool _isSymmetric;

    private ImpedanceKernel(ImpedanceTerms terms, bool isTied)
    {
        _isTied = isTied;
        _terms = terms;
        _modes = terms.Modes;
        _input = terms.Input;
        _isSymmetric = !terms.Skew.AsSpan().ContainsAnyExcept(0) && !terms.SkewParticular.AsSpan().ContainsAnyExcept(0);
    }

    public int Directions => _terms.Directions;

    /// <summary>Prepares the impedance.</summary>
    /// <param name="terms">What does not depend on the period.</param>
    /// <param name="isTied">Whether the slow-switching limit is zero, since charge need not pass a capacitor.</param>
    public static ImpedanceKernel Of(ImpedanceTerms terms, bool isTied) => new(terms, isTied);

    /// <summary>The output impedance in ohms for a period in seconds.</summary>
    public double Ohms(double period) => Evaluate(period, [], out _);

    /// <summary>What input and output see of each other besides the output impedance, for a period in seconds.</summary>
    /// <remarks>docs/theory/parasitic-capacitances.md. Without directions that take charge from the input both ratios are the ideal one.</remarks>
    public PortRatios Ratios(double period)
    {
        Evaluate(period, _input, out PortRatios ratios);
        return ratios;
    }

    /// <summary>The output impedance in ohms and all else that input and output see of each other, at the cost of the impedance.</summary>
    public double Ohms(double period, out PortRatios ratios) => Evaluate(period, _input, out ratios);

    /// <summary>The largest product of a rate and half the length of its phase; zero where no current changes.</summary>
    /// <param name="period">The period in seconds.</param>
    public double LargestExponent(double period)
    {
        double largest = 0;
        for (int r = 0; r < _modes.Count; r++)
        {
            largest = Math.Max(largest, _modes.Rates[r] * _modes.Duties[r] * period / 2);
        }

        return largest;
    }

    /// <summary>The amount of each direction at a period in seconds.</summary>
    /// <param name="period">The period in seconds.</param>
    /// <param name="amounts">Receives the amounts.</param>
    /// <param name="reversed">Whether the phases follow one another in the opposite order (the adjoint network).</param>
    public void Amounts(double period, Span<double> amounts, bool reversed)
    {
        Solve(period, reversed, [], amounts);
        DenseRows.AddMultiple(_terms.Shift, 1, amounts);
        _terms.Rotation.RotateBack(amounts);
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

        double settled = Math.Min(period, _terms.SettledPeriod);
        Solve(period, reversed, _input, amounts);
        for (int m = 0; m < amounts.Length; m++)
        {
            amounts[m] *= settled;
        }

        _terms.Rotation.RotateBack(amounts);
    }

    // All that a period decides; the modes' excess is worked out once, where there is room for it. Ratios need what each direction takes from the input.
    private double Evaluate(double period, ReadOnlySpan<double> taken, out PortRatios ratios)
    {
        int n = _terms.Directions, size = n * (n + 3);
        bool isSettled = period > _terms.SettledPeriod;

        // longer periods would only magnify rounding of the amounts; where nothing has to pass a capacitor the impedance settles too
        double solved = Math.Min(period, _terms.SettledPeriod), own = _isTied ? solved : period;
        Span<double> excess = n > 0 && _modes.Count <= MostKept ? stackalloc double[MostKept] : [];
        Span<double> room = Scratch.Of(size, stackalloc double[Math.Min(size, MostOnStack)]);
        Span<double> amounts = room[..n], test = room.Slice(n, n), input = room.Slice(2 * n, taken.Length), system = room[(3 * n)..];
        ratios = new PortRatios(_terms.OwnInput, _terms.OwnInput, 0);
        if (n > 0)
        {
            Form(solved, system, test, reversed: false, excess);
            Negate(test, amounts);
            taken.CopyTo(input);
            Solve(system, amounts, input);
            if (input.Length > 0)
            {
                ratios = Ratios(solved, test, amounts, input, solved / period);
            }
        }

        double constant = _terms.Constant, sum = 0, flows = 1 + _terms.Shifted;
        for (int m = 0; m < n; m++)
        {
            flows += Math.Abs(amounts[m]);
            constant += amounts[m] * ((2 * _terms.ConstantLinear[m]) + DenseRows.Dot(_terms.ConstantSquare.AsSpan(m * n, n), amounts));
        }

        // a long period would magnify the rounding of modes that in truth are at rest
        double share = isSettled ? Rounding * flows : 0;
        Span<double> turn = stackalloc double[ModalExcess.Turn];
        for (int first = 0; first < _modes.Count; first += ModalExcess.Turn)
        {
            if (excess.IsEmpty || own != solved)
            {
                _modes.Excess(own, first, turn);
                sum += _modes.Sum(turn, first, amounts, share);
            }
            else
            {
                sum += _modes.Sum(excess.Slice(first, ModalExcess.Turn), first, amounts, share);
            }
        }

        return constant + (own * sum);
    }

    // Test is what each direction makes of the particular flow; the particular flow makes of each the same, but for the skew part's sign.
    private PortRatios Ratios(double solved, ReadOnlySpan<double> test, ReadOnlySpan<double> amounts, ReadOnlySpan<double> input, double share)
    {
        double ratio = _terms.OwnInput;
        for (int m = 0; m < test.Length; m++)
        {
            ratio -= (test[m] - (2 * solved * _terms.SkewParticular[m])) * input[m];
        }

        return new PortRatios(ratio, _terms.OwnInput + DenseRows.Dot(_input, amounts), DenseRows.Dot(_input, input) * share);
    }

    // The amounts of the rotated directions on top of the shifted particular flow, or where something is given on the other side what that drives.
    private void Solve(double period, bool reversed, ReadOnlySpan<double> given, Span<double> amounts)
    {
        int n = _terms.Directions, size = n * (n + 1);
        Span<double> room = Scratch.Of(size, stackalloc double[Math.Min(size, MostOnStack)]);
        Span<double> test = room[..n], system = room[n..];
        Form(Math.Min(period, _terms.SettledPeriod), system, test, reversed, []);
        Negate(test, amounts);
        given.CopyTo(amounts);
        Solve(system, amounts, []);
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
        int n = _terms.Directions;
        double skew = reversed ? -period : period;
        for (int m = 0; m < n; m++)
        {
            test[m] = _terms.ConstantLinear[m] + (skew * _terms.SkewParticular[m]);
        }

        _terms.ConstantSquare.CopyTo(system);
        DenseRows.AddMultiple(_terms.Skew, skew, system);
        Span<double> turn = stackalloc double[ModalExcess.Turn];
        for (int first = 0; first < _modes.Count; first += ModalExcess.Turn)
        {
            Span<double> own = excess.IsEmpty ? turn : excess.Slice(first, ModalExcess.Turn);
            _modes.Excess(period, first, own);
            _modes.Add(period, own, first, _isSymmetric, system, test);
        }
    }
}
