using System.Globalization;

namespace ScNet.Results.Pages;

/// <summary>Counts in words.</summary>
internal static class Counts
{
    /// <summary>"1 switch", "2 switches".</summary>
    public static string Of(int count, string one, string many) => $"{count.ToString(CultureInfo.InvariantCulture)} {(count == 1 ? one : many)}";
}
