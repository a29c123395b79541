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

    // as where the compiler leaves the frame of a test away whose last act is the law
    [Fact]
    public void Without_a_test_on_the_stack_the_one_that_the_law_is_called_from_must_have_the_mark()
    {
        Exception? thrown = null;
        Thread thread = new(() => thrown = Record.Exception(() => Gen.Int.Holds(_ => { })));
        thread.Start();
        thread.Join();
        Assert.Contains(
            $"{nameof(LawTestsTests)}.{nameof(Without_a_test_on_the_stack_the_one_that_the_law_is_called_from_must_have_the_mark)}",
            Assert.IsType<InvalidOperationException>(thrown).Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("LawTestsTests.cs", nameof(A_mark_on_the_test_alone_serves), true)]
    [InlineData("LawTestsTests.cs", nameof(A_law_in_a_test_without_the_mark_is_refused), false)]
    [InlineData("LawTestsTests.cs", "SharedByTests", true)]
    [InlineData("LawCheckTests.cs", "SharedByTests", true)]
    [InlineData("AtomicFileTests.cs", "SharedByTests", false)]
    [InlineData("NoSuchTests.cs", "SharedByTests", false)]
    public void A_test_is_found_by_the_file_and_the_name_of_what_calls_a_law(string file, string name, bool isMarked) =>
        Assert.Equal(isMarked, LawTests.IsMarked("/somewhere/" + file, name));

    [Fact]
    [Trait(LawTests.Trait, LawTests.OfCheck)]
    public void A_mark_on_the_test_alone_serves()
    {
        int seen = 0;
        Gen.Int.Holds(_ => seen++, 3);
        Assert.True(seen >= 1);
    }
}
