using Fractions;
using ScNet.Netlists;
using ScNet.Topologies;

namespace ScNet.Tests.Netlists;

public sealed class NetlistWriterTests
{
    [Fact]
    public void A_converter_of_one_mode_says_in_its_switches_when_they_close()
    {
        Converter half = Converter.Create("Half").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", on: 1, ohms: 2).Switch("s2", "n", "vout", on: 1, ohms: 2)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: [1, 2], ohms: 0.25).Switch("s5", "n", "p")
            .Build();

        Assert.Equal(
            """
            name = "Half"
            input = "vin"
            output = "vout"

            [capacitors]
            fly = { between = ["p", "n"], farads = 1e-9 }

            [switches]
            s1 = { between = ["vin", "p"], ohms = 2.0, on = 1 }
            s2 = { between = ["n", "vout"], ohms = 2.0, on = 1 }
            s3 = { between = ["p", "vout"], on = 2 }
            s4 = { between = ["n", "gnd"], ohms = 0.25, on = [1, 2] }
            s5 = { between = ["n", "p"], on = [] }

            """.ReplaceLineEndings("\n"),
            NetlistWriter.ToToml(half));
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void Duties_names_load_and_modes_are_written_the_same_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        Converter two = Converter.Create("Two \"ways\"").Input("vin").Output("vout", LoadKind.Current)
            .Duties(0.3, 0.7).PhaseNames("charge", "Entladung €")
            .Capacitor("fly", "p", "n", farads: 1.5e-9, esrOhms: 0.01).Capacitor("out", "vout", "gnd", farads: 1e30)
            .Switch("s1", "vin", "p").Switch("s 2", "n", "vout").Switch("s3", "p", "vout").Switch("s4", "n", "gnd")
            .Mode("1/2", ("s1", 1), ("s 2", 1), ("s3", 2), ("s4", 2))
            .Mode("1/1", ("s1", [1, 2]), ("s3", [1, 2]))
            .Mode("off")
            .Build();

        Assert.Equal(
            """
            name = "Two \"ways\""
            input = "vin"
            output = "vout"
            load = "current"

            [phases]
            duty = [0.3, 0.7]
            names = ["charge", "Entladung €"]

            [capacitors]
            fly = { between = ["p", "n"], farads = 1.5e-9, esr_ohms = 0.01 }
            out = { between = ["vout", "gnd"], farads = 1e30 }

            [switches]
            s1 = { between = ["vin", "p"] }
            "s 2" = { between = ["n", "vout"] }
            s3 = { between = ["p", "vout"] }
            s4 = { between = ["n", "gnd"] }

            [modes."1/2"]
            s1 = 1
            "s 2" = 1
            s3 = 2
            s4 = 2

            [modes."1/1"]
            s1 = [1, 2]
            s3 = [1, 2]

            [modes.off]

            """.ReplaceLineEndings("\n"),
            NetlistWriter.ToToml(two));
    }

    [Fact]
    public void Equal_phases_are_counted_even_where_no_decimal_holds_their_duty()
    {
        string text = NetlistWriter.ToToml(BinaryConverter.StepDown(2, 1));
        Assert.Contains("\n[phases]\ncount = 3\n\n", text, StringComparison.Ordinal);
        Assert.All(NetlistReader.Read(text).GetConverter().Phases, p => Assert.Equal(new Fraction(1, 3), p.Duty));
    }

    [Fact]
    public void A_duty_without_a_decimal_is_written_as_a_fraction()
    {
        Converter uneven = Bridge([new Fraction(1, 2), new Fraction(1, 3), new Fraction(1, 6)]);

        string text = NetlistWriter.ToToml(uneven);

        Assert.Contains("\nduty = [0.5, \"1/3\", \"1/6\"]\n", text, StringComparison.Ordinal);
        Assert.Equal(uneven.Phases.Select(p => p.Duty), NetlistReader.Read(text).GetConverter().Phases.Select(p => p.Duty));
    }

    [Fact]
    public void Duties_of_too_many_digits_are_refused_by_phase_and_duty()
    {
        Fraction long7 = new(1, System.Numerics.BigInteger.Pow(7, 80));
        ArgumentException exception = Assert.Throws<ArgumentException>(() => NetlistWriter.ToToml(Bridge([long7, Fraction.One - long7])));
        Assert.StartsWith(
            "Expected equal phases, or duties that are decimals or fractions of at most 64 characters, but phase 1 of 'Bridge' lasts 1/",
            exception.Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(60, false)]
    [InlineData(70, true)]
    public void A_duty_of_more_digits_than_can_be_read_is_refused(int places, bool isRefused)
    {
        Fraction odd = new Fraction(1, 3) - Remainder(places);
        Converter converter = Bridge([odd, Fraction.One - odd]);
        if (isRefused)
        {
            Assert.Throws<ArgumentException>(() => NetlistWriter.ToToml(converter));
        }
        else
        {
            Assert.Equal(odd, NetlistReader.Read(NetlistWriter.ToToml(converter)).GetConverter().Phases[0].Duty);
        }

        // what is left of a third after so many decimal places
        static Fraction Remainder(int places) => new Fraction(1, 3) - new Fraction((System.Numerics.BigInteger.Pow(10, places) - 1) / 3, System.Numerics.BigInteger.Pow(10, places));
    }

    [Fact]
    public void A_tiny_duty_is_written_with_an_exponent()
    {
        Fraction tiny = new(7, System.Numerics.BigInteger.Pow(10, 90));
        string text = NetlistWriter.ToToml(Bridge([Fraction.One, tiny]));
        Assert.Contains("duty = [1.0, 7e-90]\n", text, StringComparison.Ordinal);
        Assert.Equal(tiny, NetlistReader.Read(text).GetConverter().Phases[1].Duty);
    }

    [Fact]
    public void No_converter_is_refused() => Assert.Throws<ArgumentNullException>(() => NetlistWriter.ToToml(null!));

    private static Converter Bridge(Fraction[] duties) => Converter.Create("Bridge").Input("vin").Output("vout").Duties(duties)
        .Capacitor("fly", "p", "n").Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build();
}
