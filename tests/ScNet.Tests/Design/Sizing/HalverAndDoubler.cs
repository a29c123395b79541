using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Netlists;

namespace ScNet.Tests.Design.Sizing;

/// <summary>A halver and a doubler of one capacitor, each of which closes one switch that the other does not.</summary>
internal static class HalverAndDoubler
{
    /// <summary>Both modes, "1/2" and "2".</summary>
    public static ConverterAnalysis Analysis { get; } = ConverterAnalysis.Of(NetlistReader.Read("""
        name = "gears"
        input = "vin"
        output = "vout"
        [capacitors]
        c = { between = ["p", "n"] }
        [switches]
        a = { between = ["vin", "p"] }
        b = { between = ["vin", "n"] }
        d = { between = ["vout", "p"] }
        e = { between = ["vout", "n"] }
        g = { between = ["gnd", "n"] }
        [modes."1/2"]
        a = 1
        d = 2
        e = 1
        g = 2
        [modes."2"]
        a = 1
        b = 2
        d = 2
        g = 1
        """).GetConverter());

    /// <summary>A point of the halver that a given impedance holds: (V/2 − V_out) over 1 mA.</summary>
    public static SizingPoint Halved(double ohms) => new("1/2", 2, 1 - (ohms * 1e-3), 1e-3);

    /// <summary>A point of the doubler: (2 V − V_out) over 1 mA.</summary>
    public static SizingPoint Doubled(double ohms) => new("2", 1, 2 - (ohms * 1e-3), 1e-3);
}
