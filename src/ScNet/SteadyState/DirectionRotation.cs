using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// The free directions rotated among themselves until each drives the capacitors independently of the
/// others in the slow limit, the strongest beside the weakest, and those that move no capacitor apart.
/// </summary>
/// <remarks>
/// At a low frequency the equations of directions that move capacitors outgrow those of directions that
/// only circulate through resistors by any factor; mixed with one another, the latter would drown in the
/// rounding of the former. Rotated, every unknown has a scale of its own. Cost: directions² · modes.
/// </remarks>
internal sealed class DirectionRotation
{
    // Beyond this many the rotation would cost more than all else.
    private const int LargestCount = 64;

    private readonly int _count;
    private readonly DenseRows _rows;
    private readonly int _modes;

    private DirectionRotation(DenseRows rows, int modes, int count)
    {
        _rows = rows;
        _modes = modes;
        _count = count;
    }

    /// <summary>Rotates directions.</summary>
    /// <param name="slowDrives">One row per direction: its charge in each exponential mode times the root of the mode's rate; then one empty column per direction.</param>
    /// <param name="modes">The number of modes.</param>
    public static DirectionRotation Of(DenseRows slowDrives, int modes)
    {
        for (int k = 0; k < slowDrives.RowCount; k++)
        {
            slowDrives[k, modes + k] = 1;
        }

        if (slowDrives.RowCount <= LargestCount)
        {
            slowDrives.Orthogonalise(0, 0, modes);
        }

        return new DirectionRotation(slowDrives, modes, slowDrives.RowCount);
    }

    /// <summary>Whether the directions were few enough to be rotated.</summary>
    public bool IsOrthogonal => _count <= LargestCount;

    /// <summary>What was given, rotated: the charge of a direction in each mode times the root of the mode's rate.</summary>
    public ReadOnlySpan<double> SlowDrives(int direction) => _rows.Row(direction)[.._modes];

    /// <summary>One value per direction, rotated.</summary>
    public double[] Rotate(double[] values)
    {
        var rotated = new double[_count];
        for (int i = 0; i < _count; i++)
        {
            rotated[i] = DenseRows.Dot(Weights(i), values);
        }

        return rotated;
    }

    /// <summary>One value per pair of directions, by rows, rotated on both sides.</summary>
    public double[] RotateSquare(double[] values)
    {
        double[] half = new double[_count * _count], rotated = new double[_count * _count];
        for (int i = 0; i < _count; i++)
        {
            for (int k = 0; k < _count; k++)
            {
                DenseRows.AddMultiple(values.AsSpan(k * _count, _count), Weights(i)[k], half.AsSpan(i * _count, _count));
            }

            for (int k = 0; k < _count; k++)
            {
                rotated[(i * _count) + k] = DenseRows.Dot(half.AsSpan(i * _count, _count), Weights(k));
            }
        }

        return rotated;
    }

    /// <summary>The amounts of the directions as given that amounts of rotated ones make.</summary>
    public void RotateBack(Span<double> amounts)
    {
        Span<double> given = Scratch.Of(_count, stackalloc double[LargestCount]);
        given.Clear();
        for (int i = 0; i < _count; i++)
        {
            DenseRows.AddMultiple(Weights(i), amounts[i], given);
        }

        given.CopyTo(amounts);
    }

    private ReadOnlySpan<double> Weights(int direction) => _rows.Row(direction)[_modes..];
}
