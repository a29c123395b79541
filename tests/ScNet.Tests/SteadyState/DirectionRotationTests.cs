using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>A rotation of directions is orthogonal, and all that is rotated by it is rotated alike.</summary>
public sealed class DirectionRotationTests
{
    // three directions over two modes, none at right angles to another
    private static readonly double[][] s_drives = [[3, 0], [1, 2], [-1, 5]];

    [Fact]
    public void Rotated_directions_drive_the_modes_independently()
    {
        DirectionRotation rotation = Of(s_drives);
        Assert.True(rotation.IsOrthogonal);
        for (int i = 0; i < 3; i++)
        {
            for (int k = 0; k < i; k++)
            {
                Assert.Equal(0, DenseRows.Dot(rotation.SlowDrives(i), rotation.SlowDrives(k)), 1e-14);
            }
        }
    }

    [Fact]
    public void Weights_are_orthonormal_and_make_the_drives_of_those_given()
    {
        double[][] weights = Weights(Of(s_drives), 3);
        for (int i = 0; i < 3; i++)
        {
            for (int k = 0; k < 3; k++)
            {
                Assert.Equal(i == k ? 1 : 0, DenseRows.Dot(weights[i], weights[k]), 1e-15);
            }

            double[] made = [.. Enumerable.Range(0, 2).Select(mode => Enumerable.Range(0, 3).Sum(k => weights[i][k] * s_drives[k][mode]))];
            Assert.Equal(made, Of(s_drives).SlowDrives(i).ToArray(), Closeness.Within(1e-14));
        }
    }

    [Fact]
    public void Values_squares_and_amounts_are_rotated_by_the_same_weights()
    {
        DirectionRotation rotation = Of(s_drives);
        double[][] q = Weights(rotation, 3);
        double[] values = [1, 2, 5], square = [1, 2, 3, 4, 5, 6, 7, 8, 10], amounts = [1, 2, 5];
        int[] all = [0, 1, 2];
        Assert.Equal([.. all.Select(i => all.Sum(k => q[i][k] * values[k]))], rotation.Rotate(values), Closeness.Within(1e-14));
        Assert.Equal(
            [.. all.SelectMany(i => all.Select(j => all.Sum(k => all.Sum(l => q[i][k] * square[(3 * k) + l] * q[j][l]))))],
            rotation.RotateSquare(square),
            Closeness.Within(1e-13));
        rotation.RotateBack(amounts);
        Assert.Equal([.. all.Select(k => all.Sum(i => q[i][k] * values[i]))], amounts, Closeness.Within(1e-14));
    }

    [Theory]
    [InlineData(64, true)]
    [InlineData(65, false)]
    public void Many_directions_stay_as_they_are(int count, bool isOrthogonal)
    {
        // each drives its own mode and that of the first
        double[][] drives = [.. Enumerable.Range(0, count).Select(k => Enumerable.Range(0, count).Select(r => r == 0 || r == k ? 1.0 + k : 0).ToArray())];
        DirectionRotation rotation = Of(drives);
        Assert.Equal(isOrthogonal, rotation.IsOrthogonal);
        Assert.Equal(isOrthogonal, Math.Abs(DenseRows.Dot(rotation.SlowDrives(1), rotation.SlowDrives(2))) < 1e-9);
        double[] values = [.. Enumerable.Range(1, count).Select(k => 1.0 / k)], back = [.. rotation.Rotate(values)];
        Assert.Equal(!isOrthogonal, back.SequenceEqual(values));
        rotation.RotateBack(back);
        Assert.Equal(values, back, Closeness.Within(1e-13));
    }

    // what unit values become, one after the other
    private static double[][] Weights(DirectionRotation rotation, int count)
    {
        double[][] columns = [.. Enumerable.Range(0, count).Select(k => rotation.Rotate([.. Enumerable.Range(0, count).Select(l => k == l ? 1.0 : 0)]))];
        return [.. Enumerable.Range(0, count).Select(i => columns.Select(c => c[i]).ToArray())];
    }

    private static DirectionRotation Of(double[][] drives)
    {
        int modes = drives[0].Length;
        DenseRows rows = new(drives.Length, modes + drives.Length);
        for (int k = 0; k < drives.Length; k++)
        {
            drives[k].CopyTo(rows.Row(k));
        }

        return DirectionRotation.Of(rows, modes);
    }
}
