using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// What drives the exponential modes of all phases, in the particular flow and in each free direction, and what they make
/// of a period: turn by turn, so that several modes share each instruction.
/// </summary>
/// <remarks>Symbols and equations: docs/theory/output-impedance.md.</remarks>
internal sealed class ModeDrives
{
    private readonly double[] _drive;
    private readonly double[] _scale;

    // by directions, and for each turn of modes whether a direction drives any of them
    private readonly double[] _directionDrive;
    private readonly int _turns;
    private readonly bool[] _isMoved;
    private readonly ModalExcess _excess;

    /// <summary>Keeps the drives.</summary>
    /// <param name="rates">The rate of each mode, above zero.</param>
    /// <param name="duties">The duty of the phase of each mode.</param>
    /// <param name="drives">The drive of each mode in the particular flow.</param>
    /// <param name="scales">The size of what makes up each drive, against which rounding is measured.</param>
    /// <param name="rotation">The directions in use.</param>
    /// <param name="directions">Their number.</param>
    public ModeDrives(double[] rates, double[] duties, double[] drives, double[] scales, DirectionRotation rotation, int directions)
    {
        Rates = rates;
        Duties = duties;
        _drive = drives;
        _scale = scales;
        _excess = new ModalExcess(rates, duties);
        _turns = (rates.Length + ModalExcess.Turn - 1) / ModalExcess.Turn;
        _directionDrive = new double[rates.Length * directions];
        _isMoved = new bool[directions * _turns];
        for (int k = 0; k < directions; k++)
        {
            for (int r = 0; r < rates.Length; r++)
            {
                double drive = Math.Sqrt(rates[r]) * rotation.SlowDrives(k)[r];
                _directionDrive[(k * rates.Length) + r] = drive;
                _isMoved[(k * _turns) + (r / ModalExcess.Turn)] |= drive != 0;
            }
        }
    }

    public double[] Rates { get; }

    public double[] Duties { get; }

    public int Count => Rates.Length;

    /// <summary>The excess of the modes of one turn at a period in seconds.</summary>
    public void Excess(double period, int first, Span<double> turn) => _excess.Evaluate(period, first, turn);

    /// <summary>The excess of the modes of one turn, each times the square of its drive.</summary>
    /// <param name="excess">What <see cref="Excess"/> gives.</param>
    /// <param name="first">The first mode of the turn.</param>
    /// <param name="amounts">The amount of each direction.</param>
    /// <param name="share">Drives below this share of what makes them up are left out; zero for none.</param>
    public double Sum(ReadOnlySpan<double> excess, int first, ReadOnlySpan<double> amounts, double share)
    {
        int count = Math.Min(ModalExcess.Turn, Count - first);
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

    /// <summary>Adds what the modes of one turn contribute to the equations of the directions.</summary>
    /// <param name="period">The period in seconds.</param>
    /// <param name="excess">What <see cref="Excess"/> gives.</param>
    /// <param name="first">The first mode of the turn.</param>
    /// <param name="isSymmetric">Whether only the lower half of the system is wanted.</param>
    /// <param name="system">What each direction makes of every other, by rows.</param>
    /// <param name="test">What each direction makes of the particular flow.</param>
    public void Add(double period, ReadOnlySpan<double> excess, int first, bool isSymmetric, Span<double> system, Span<double> test)
    {
        int n = test.Length, count = Math.Min(ModalExcess.Turn, Count - first);
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
            for (int k = isSymmetric ? m : n - 1; k >= 0; k--)
            {
                system[(m * n) + k] += IsMoved(k, first) ? DenseRows.Dot(weighted, Drives(k, first, count)) : 0;
            }
        }
    }

    /// <summary>The charges of the particular flow in use, then of the directions, by modes.</summary>
    /// <param name="ramps">The ramp of each mode.</param>
    /// <param name="directions">The number of directions.</param>
    public DenseRows Charges(double[] ramps, int directions)
    {
        DenseRows charges = new(1 + directions, Count);
        for (int r = 0; r < Count; r++)
        {
            charges[0, r] = (_drive[r] + (Duties[r] * ramps[r])) / Rates[r];
            for (int k = 0; k < directions; k++)
            {
                charges[1 + k, r] = _directionDrive[(k * Count) + r] / Rates[r];
            }
        }

        return charges;
    }

    private bool IsMoved(int direction, int first) => _isMoved[(direction * _turns) + (first / ModalExcess.Turn)];

    private ReadOnlySpan<double> Drives(int direction, int first, int count) =>
        _directionDrive.AsSpan((direction * Count) + first, count);
}
