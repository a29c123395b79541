using CsCheck;

namespace ScNet.Tests;

/// <summary>A law in a test that campaigns do not find is an error at once.</summary>
public sealed class LawTestsTests
{
    [Fact]
    public void A_law_in_a_test_without_the_mark_is_refused() => Assert.Contains(
        $"{nameof(LawTestsTests)}.{nameof(A_law_in_a_test_without_the_mark_is_refused)}",
        Assert.Throws<InvalidOperationException>(() => Gen.Int.Holds(_ => { })).Message,
        StringComparison.Ordinal);

    [Fact]
    public void A_law_outside_of_any_test_is_refused()
    {
        Exception? thrown = null;
        Thread thread = new(() => thrown = Record.Exception(() => Gen.Int.Holds(_ => { })));
        thread.Start();
        thread.Join();
        Assert.Contains("No test", Assert.IsType<InvalidOperationException>(thrown).Message, StringComparison.Ordinal);
    }

    [Fact]
    [Trait(LawTests.Trait, LawTests.OfCheck)]
    public void A_mark_on_the_test_alone_serves()
    {
        int seen = 0;
        Gen.Int.Holds(_ => seen++, 3);
        Assert.True(seen >= 1);
    }
}
