using ScNet.Design.Requirements;

namespace ScNet.Tests.Design.Requirements;

public sealed class CandidateRequestTests
{
    private static CandidateRequest Request => new() { Families = ["ladder", "dickson"], Sizes = new(2, 4), Ratios = [new(1, 3), new(1, 2)], AreGears = true };

    [Fact]
    public void Its_text_has_the_families_and_what_is_told_of_sizes_and_ratios()
    {
        Assert.Equal("ladder + dickson 2 to 4 of 1/3, 1/2", Request.ToString());
        Assert.Equal("ladder", new CandidateRequest { Families = ["ladder"] }.ToString());
        Assert.Equal("ladder of 1/3", new CandidateRequest { Families = ["ladder"], Ratios = [new(1, 3)] }.ToString());
        Assert.Equal("half.toml", new CandidateRequest { File = "half.toml" }.ToString());
    }

    [Fact]
    public void Sizes_end_at_1000()
    {
        Assert.Equal(1000, (Request with { Sizes = new(1, 1000) }).Sizes.Maximum);
        Assert.Throws<ArgumentOutOfRangeException>(() => Request with { Sizes = new(1, 1001) });
        Assert.Throws<ArgumentOutOfRangeException>(() => Request with { Sizes = new(0, 1000) });
    }

    /// <summary>That two of these hashes are the same by chance has a probability of about 10 in 2³².</summary>
    [Fact]
    public void The_hash_depends_on_everything_that_is_asked_for()
    {
        CandidateRequest file = new() { File = "a.toml" };
        CandidateRequest[] requests =
        [
            Request, Request with { Families = ["ladder", "doubler"] }, Request with { Sizes = new(2, 3) }, Request with { Ratios = [new(1, 3)] },
            Request with { Ratios = [new(1, 3), new(1, 4)] }, Request with { AreGears = false }, file, file with { File = "b.toml" },
        ];
        Assert.Equal(requests.Length, requests.Select(r => r.GetHashCode()).Distinct().Count());
        Assert.Equal(Request.GetHashCode(), Request.GetHashCode());
    }
}
