using System.Numerics;

namespace ScNet.Search.Tests.Completeness;

/// <summary>Gauss's elimination of whole numbers of any size, written for the tests alone.</summary>
internal static class ExactRank
{
    /// <summary>The rows brought to echelon form, those of zeros left out.</summary>
    public static List<BigInteger[]> Echelon(IEnumerable<BigInteger[]> rows, int width)
    {
        List<BigInteger[]> left = [.. rows.Select(row => (BigInteger[])row.Clone())], echelon = [];
        for (int column = 0; column < width; column++)
        {
            int at = left.FindIndex(row => !row[column].IsZero);
            if (at < 0)
            {
                continue;
            }

            BigInteger[] pivot = left[at];
            left.RemoveAt(at);
            echelon.Add(pivot);
            for (int r = 0; r < left.Count; r++)
            {
                BigInteger own = left[r][column];
                left[r] = [.. left[r].Select((value, c) => (value * pivot[column]) - (own * pivot[c]))];
            }
        }

        return echelon;
    }
}
