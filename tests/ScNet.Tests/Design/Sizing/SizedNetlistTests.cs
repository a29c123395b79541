using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Netlists;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Sizing;

public sealed class SizedNetlistTests
{
    private static readonly Converter s_converter = NetlistReader.Read("""
        name = "halver"
        input = "vin"
        output = "vout"
        [capacitors]
        "c\nx = 1" = { between = ["p", "n"] }
        [switches]
        a = { between = ["vin", "p"], on = [1] }
        b = { between = ["n", "vout"], on = [1] }
        d = { between = ["p", "vout"], on = [2] }
        e = { between = ["n", "gnd"], on = [2] }
        """).GetConverter();

    // 20 nF at 10 nF/mm² in two in series: 4 mm² each of 40 nF; 50 Ω of 1000 Ω µm in one: 20 µm; of two: 40 µm each
    private static readonly SizedConverter s_sized = Sized.Of(s_converter.WithValues([20e-9], [50, 50, 50, 50]), inSeries: 2);

    [Fact]
    public void Remarks_tell_area_count_kind_and_size()
    {
        string[] lines = SizedNetlist.Of(s_sized).Split('\n');

        // 2 · 4 mm² and 4 · 2 · 40 µm² = 0.00032 mm²
        Assert.Equal("# area 8.00032 mm²", lines[0]);
        Assert.Equal("# c x = 1: 2 × c (2 V), 4E+06 µm² each", lines[1]);
        Assert.Equal("# a: 2 × n (2 V), 40 µm wide each", lines[2]);
        Assert.StartsWith("# e: ", lines[5], StringComparison.Ordinal);
        Assert.Equal(string.Empty, lines[6]);
    }

    [Fact]
    public void The_document_is_read_again_with_the_same_values()
    {
        Converter read = NetlistReader.Read(SizedNetlist.Of(s_sized)).GetConverter();
        Assert.Equal([20e-9], read.Capacitors.Select(c => c.Farads));
        Assert.Equal([50, 50, 50, 50], read.Switches.Select(s => s.Ohms));
        Assert.Equal("c\nx = 1", read.Capacitors[0].Name);
    }
}
