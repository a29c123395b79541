namespace ScNet.Reporting.Tests.Drawings;

[Trait("Kind", "Law")]
public sealed class DrawingLaws
{
    [Fact]
    public void Nothing_overlaps_in_any_converter() => LawCheck.Holds(AnyNetworks.Gen, sample => Assert.Empty(DrawnNetworks.Faults(sample.Build())), count: 12);

    [Fact]
    public void Nothing_overlaps_in_any_phase() =>
        LawCheck.Holds(ConsistentNetworks.Gen(LoadKind.Stiff, hasTwins: true), sample => Assert.Empty(DrawnNetworks.Faults(sample.Converter)), count: 12);

    [Fact]
    public void Nothing_overlaps_with_inductors_and_further_outputs() =>
        LawCheck.Holds(OutputNetworks.Inductive, converter => Assert.Empty(DrawnNetworks.Faults(converter)), count: 12);

    [Fact]
    public void Nothing_overlaps_with_plates_strays_and_resistances() =>
        LawCheck.Holds(PlatedNetworks.Any, converter => Assert.Empty(DrawnNetworks.Faults(converter)), count: 12);
}
