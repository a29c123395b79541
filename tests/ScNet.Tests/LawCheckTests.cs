using CsCheck;
using ScNet.Netlists;
using ScNet.Topologies;

namespace ScNet.Tests;

/// <summary>The check of laws is itself held to fail, to repeat itself and to make failures small.</summary>
[Trait("Kind", "LawCheck")]
public sealed class LawCheckTests
{
    [Fact]
    public void A_law_sees_the_same_cases_on_every_run() => Assert.Equal(Drawn(), Drawn());

    [Fact]
    public void Laws_of_other_names_see_other_cases() => Assert.NotEqual(Drawn(), Drawn("another"));

    [Fact]
    public void Every_case_is_seen() => Assert.Equal(LawCheck.Total(250), Drawn(count: 250).Count);

    [Fact]
    public void A_law_that_one_case_breaks_fails_with_a_small_case_and_the_way_to_draw_it_again()
    {
        LawBrokenException broken = Assert.Throws<LawBrokenException>(
            () => Gen.Int[0, 100_000].Holds(n => Assert.True(n < 1000), print: n => $"n = {n}"));
        Assert.Matches("SCNET_LAWS_CASE=[0-9A-Za-z_-]+: n = 1[0-9]{3}\n", broken.Message);
        Assert.IsAssignableFrom<Xunit.Sdk.XunitException>(broken.InnerException);
    }

    [Fact]
    public void The_first_case_that_breaks_a_law_is_told_where_no_draws_shall_make_it_smaller()
    {
        string? before = Environment.GetEnvironmentVariable("SCNET_LAWS_SHRINKING");
        List<int> drawn = [];
        try
        {
            Environment.SetEnvironmentVariable("SCNET_LAWS_SHRINKING", "0");
            string message = Assert.Throws<LawBrokenException>(() => Gen.Int[0, 100_000].Holds(
                n =>
                {
                    drawn.Add(n);
                    Assert.True(n < 1000);
                },
                print: n => $"n = {n}")).Message;
            Assert.Equal(1, drawn.Count(n => n >= 1000));
            Assert.Contains($"n = {drawn[^1]}\n", message, StringComparison.Ordinal);
        }
        finally
        {
            Environment.SetEnvironmentVariable("SCNET_LAWS_SHRINKING", before);
        }
    }

    [Fact]
    public void The_case_that_a_failure_names_is_drawn_again()
    {
        string message = Assert.Throws<LawBrokenException>(
            () => Gen.Int[0, 100_000].Holds(n => Assert.True(n < 1000), print: n => $"n = {n}")).Message;
        string state = message.Split("SCNET_LAWS_CASE=")[1].Split(':')[0];
        Assert.Contains($"n = {Gen.Int[0, 100_000].Generate(PCG.Parse(state), null, out _)}\n", message, StringComparison.Ordinal);
    }

    [Fact]
    public void Cases_that_once_broke_a_law_come_first()
    {
        string state = new PCG(7, 11).ToString();
        int once = Gen.Int.Generate(PCG.Parse(state), null, out _);
        List<int> drawn = [];
        Gen.Int.Holds(drawn.Add, 20, found: [state], name: "one");
        Assert.Equal([once, .. Drawn()], drawn);
        Assert.Contains(state, Assert.Throws<LawBrokenException>(() => Gen.Int.Holds(n => Assert.NotEqual(once, n), found: [state])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_converter_is_told_as_a_document_to_be_read_again()
    {
        Converter converter = Ladder.StepDown(3);
        string message = Assert.Throws<LawBrokenException>(() => Gen.Const((converter, 1)).Holds((c, _) => Assert.Empty(c.Switches))).Message;
        Assert.Contains(NetlistWriter.ToToml(converter), message, StringComparison.Ordinal);
    }

    private static List<int> Drawn(string name = "one", int count = 20)
    {
        List<int> drawn = [];
        Gen.Int.Holds(drawn.Add, count, name: name);
        return drawn;
    }
}
