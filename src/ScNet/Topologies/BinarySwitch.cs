namespace ScNet.Topologies;

/// <summary>
/// A switch between two places of a binary converter: 0 is the high node, 2j - 1 and 2j the plates of
/// capacitor j, then the low node and the reference. The place of the lower number comes first.
/// </summary>
internal readonly record struct BinarySwitch(int FirstPlace, int SecondPlace) : IComparable<BinarySwitch>
{
    public const int High = 0;
    public const int Low = int.MaxValue - 1;
    public const int Reference = int.MaxValue;

    public string Name => $"{NameOf(FirstPlace)}-{NameOf(SecondPlace)}";

    public static BinarySwitch Between(int place, int other) => new(Math.Min(place, other), Math.Max(place, other));

    public static int Plate(int capacitor, bool positive) => (2 * capacitor) - (positive ? 1 : 0);

    public string First(FamilyFrame frame) => NodeOf(FirstPlace, frame);

    public string Second(FamilyFrame frame) => NodeOf(SecondPlace, frame);

    public int CompareTo(BinarySwitch other) => (FirstPlace, SecondPlace).CompareTo((other.FirstPlace, other.SecondPlace));

    private static string NodeOf(int place, FamilyFrame frame) => place switch
    {
        High => frame.High,
        Low => frame.Low,
        _ => NameOf(place),
    };

    private static string NameOf(int place) => place switch
    {
        High => "high",
        Low => "low",
        Reference => Converter.ReferenceNode,
        _ => $"{(place % 2 == 1 ? "p" : "n")}{(place + 1) / 2}",
    };
}
