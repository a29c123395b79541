using ScNet.Reporting.Drawings;

namespace ScNet.Reporting.Tests.Drawings;

public sealed class SheetFaultsTests
{
    private static readonly CircuitPart s_part = new(PartKind.Capacitor, "fly", 1, 2);

    [Fact]
    public void A_sound_sheet_has_no_faults() => Assert.Empty(SheetFaults.Of(Sound()));

    [Fact]
    public void Text_on_a_symbol_is_found() =>
        Assert.Contains("text 'p ' lies on symbol fly", Faults(s => s.Labels.Add(new(new(60, 50, 70, 64), "p", LabelRole.Node))));

    [Fact]
    public void Text_on_text_is_found() =>
        Assert.Contains("text 'q ' lies on text 'p '", Faults(s => s.Labels.AddRange([new(new(10, 50, 20, 64), "p", LabelRole.Node), new(new(19, 63, 30, 70), "q", LabelRole.Node)])));

    [Fact]
    public void A_wire_through_text_is_found() =>
        Assert.Contains("wire of net 1 runs through text 'p '", Faults(s => s.Labels.Add(new(new(45, 10, 60, 30), "p", LabelRole.Node))));

    [Fact]
    public void A_wire_through_a_symbol_is_found() =>
        Assert.Contains("wire of net 3 runs through symbol fly", Faults(s => s.Wires.Add(new(3, new(5, 55), new(90, 55)))));

    [Fact]
    public void A_wire_beside_the_middle_of_an_arrow_is_found() =>
        Assert.Contains("wire of net 1 runs through arrow of fly", Faults(s => s.Arrows.Add(new(s_part, new(46, 24, 56, 34), ArrowWay.Down))));

    [Fact]
    public void Wires_along_one_another_are_found() =>
        Assert.Contains("wires of nets 3 and 1 run along one another", Faults(s => s.Wires.Add(new(3, new(50, 5), new(50, 25)))));

    [Fact]
    public void A_wire_drawn_twice_is_found() =>
        Assert.Contains("wires of nets 1 and 1 run along one another", Faults(s => s.Wires.Add(new(1, new(50, 22), new(50, 30)))));

    [Fact]
    public void Wires_of_different_nets_that_touch_are_found() =>
        Assert.Contains("wires of nets 3 and 1 touch", Faults(s => s.Wires.Add(new(3, new(50, 30), new(90, 30)))));

    [Fact]
    public void Wires_of_different_nets_may_cross() =>
        Assert.DoesNotContain(Faults(s => s.Wires.Add(new(3, new(10, 30), new(90, 30)))), f => f.Contains("touch", StringComparison.Ordinal) || f.Contains("along", StringComparison.Ordinal));

    [Fact]
    public void A_joint_without_a_dot_is_found() =>
        Assert.Contains("net 1 has 3 ways and 0 dots at SheetPoint { X = 50, Y = 30 }", Faults(s => s.Wires.Add(new(1, new(50, 30), new(90, 30)))));

    [Fact]
    public void A_dot_on_a_crossing_is_found() => Assert.Contains("a dot at SheetPoint { X = 50, Y = 30 } joins nothing", Faults(s =>
    {
        s.Wires.Add(new(3, new(10, 30), new(90, 30)));
        s.Dots.Add(new(1, new(50, 30), IsOpen: false));
    }));

    [Fact]
    public void A_torn_net_is_found() => Assert.Contains("net 1 is torn", Faults(s => s.Wires.Add(new(1, new(80, 20), new(80, 30)))));

    [Fact]
    public void A_symbol_on_the_wrong_net_is_found() => Assert.Contains("fly does not touch net 2", Faults(s => s.Wires[1] = s.Wires[1] with { Net = 3 }));

    [Fact]
    public void Something_beside_the_page_is_found() => Assert.Contains("text 'p ' is beside the page", Faults(s => s.Labels.Add(new(new(95, 5, 101, 15), "p", LabelRole.Node))));

    [Fact]
    public void A_slanting_wire_is_found() => Assert.Contains("wire of net 3 is a point or slants", Faults(s => s.Wires.Add(new(3, new(5, 5), new(6, 90)))));

    // an upright capacitor whose two wires end openly
    private static Sheet Sound()
    {
        Sheet sheet = new() { Width = 100, Height = 120 };
        sheet.Symbols.Add(new(s_part, new(35, 40, 65, 80), new(50, 40), new(50, 80)));
        sheet.Wires.AddRange([new(1, new(50, 20), new(50, 40)), new(2, new(50, 80), new(50, 100))]);
        sheet.Dots.AddRange([new(1, new(50, 20), IsOpen: true), new(2, new(50, 100), IsOpen: true)]);
        return sheet;
    }

    private static IReadOnlyList<string> Faults(Action<Sheet> change)
    {
        Sheet sheet = Sound();
        change(sheet);
        IReadOnlyList<string> faults = SheetFaults.Of(sheet);
        return faults;
    }
}
