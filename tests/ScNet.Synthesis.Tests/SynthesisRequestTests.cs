using Fractions;

namespace ScNet.Synthesis.Tests;

public class SynthesisRequestTests
{
    [Fact]
    public void A_request_keeps_its_ratios_when_the_list_it_was_given_changes()
    {
        List<WantedRatio> given = [new(new Fraction(1, 2), 4.2)];
        SynthesisRequest first = new(given, 1);
        SynthesisRequest second = first with { Ratios = given };
        given.Add(new(new Fraction(1, 3), 4.2));
        Assert.All([first, second], r => Assert.Single(r.Ratios));
        Assert.False(first.Ratios is WantedRatio[] or List<WantedRatio>);
    }
}
