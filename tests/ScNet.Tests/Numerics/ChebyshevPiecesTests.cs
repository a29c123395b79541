using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>Functions on pieces against the functions themselves, of which they know some points only.</summary>
public sealed class ChebyshevPiecesTests
{
    [Fact]
    public void Functions_and_slopes_are_those_that_were_sampled()
    {
        ChebyshevPieces pieces = ChebyshevPieces.Of(
            2,
            (x, f) => (f[0], f[1]) = (Math.Exp(x), 1e-9 / (1 + (x * x))),
            [-4, 5],
            1e-13,
            isAbsolute: false);
        for (int k = 0; k <= 1000; k++)
        {
            double x = -4 + (9 * k / 1000.0);
            int piece = PieceAt(pieces, x);
            (double value, double slope) = pieces.At(piece, 0, x);
            Assert.Equal(1, value / Math.Exp(x), 1e-12);
            Assert.Equal(1, slope / Math.Exp(x), 1e-10);
            Assert.Equal(1, pieces.ValueAt(piece, 0, x) / value, 1e-12);
            (value, slope) = pieces.At(piece, 1, x);
            Assert.Equal(1e-9 / (1 + (x * x)), value, 1e-21);
            Assert.Equal(-2e-9 * x / ((1 + (x * x)) * (1 + (x * x))), slope, 1e-18);
        }
    }

    [Fact]
    public void A_function_with_a_corner_takes_few_pieces_where_they_end_there()
    {
        static void Corner(double x, Span<double> f) => f[0] = Math.Abs(x - 0.3);
        ChebyshevPieces told = ChebyshevPieces.Of(1, Corner, [0, 0.3, 1], 1e-13, isAbsolute: false);
        ChebyshevPieces untold = ChebyshevPieces.Of(1, Corner, [0, 1], 1e-13, isAbsolute: false);
        Assert.Equal(2, told.Count);
        Assert.InRange(untold.Count, 10, 24);
        Assert.Equal(0.05, told.ValueAt(0, 0, 0.25), 1e-14);
        Assert.Equal(0.5, told.ValueAt(1, 0, 0.8), 1e-14);
    }

    [Fact]
    public void Places_rise_and_hold_what_was_sampled_there()
    {
        ChebyshevPieces pieces = ChebyshevPieces.Of(1, (x, f) => f[0] = Math.Sin(9 * x), [0, 2], 1e-13, isAbsolute: true);
        Assert.Equal(pieces.Count * (ChebyshevPieces.Degree + 1), pieces.Places.Length);
        Assert.Equal((0, 2), (pieces.Places[0], pieces.Places[^1]));
        for (int k = 0; k < pieces.Places.Length; k++)
        {
            Assert.True(k == 0 || pieces.Places[k] >= pieces.Places[k - 1]);
            Assert.Equal(Math.Sin(9 * pieces.Places[k]), pieces.Sample(k, 0));
            Assert.Equal(pieces.Sample(k, 0), pieces.ValueAt(ChebyshevPieces.PieceOf(k), 0, pieces.Places[k]), 1e-13);
        }
    }

    private static int PieceAt(ChebyshevPieces pieces, double x)
    {
        int piece = 0;
        while (pieces.Places[(piece * (ChebyshevPieces.Degree + 1)) + ChebyshevPieces.Degree] < x)
        {
            piece++;
        }

        return piece;
    }
}
