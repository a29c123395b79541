namespace ScNet.Synthesis;

/// <summary>"7 switches", "12 devices", "the area of 20 single devices".</summary>
internal static class CostText
{
    public static string Of(SynthesisCost cost, int? amount) => cost switch
    {
        SynthesisCost.Switches => UnitText.Count(amount ?? 0, "switch", "switches"),
        SynthesisCost.Devices => UnitText.Count(amount ?? 0, "device", "devices"),
        _ => $"the area of {UnitText.Count(amount ?? 0, "single device", "single devices")}",
    };
}
