namespace ScNet.Tests;

public sealed class NamedListTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(500)]
    public void Entries_are_found_by_position_and_by_name(int count)
    {
        NamedList<int> list = Of(count);
        Assert.Equal(count, list.Count);
        Assert.Equal(Enumerable.Range(0, count), list);
        for (int i = 0; i < count; i++)
        {
            Assert.Equal(i, list[i]);
            Assert.Equal(i, list[$"fly{i}"]);
            Assert.Equal(i, list.PositionOf($"fly{i}"));
            Assert.True(list.TryGet($"fly{i}", out int found) && found == i);
        }

        Assert.False(list.TryGet("none", out int missing));
        Assert.Equal(0, missing);
    }

    [Fact]
    public void An_unknown_name_is_answered_with_the_one_that_comes_near()
    {
        NamedList<int> list = Of(30);
        ArgumentException exception = Assert.Throws<ArgumentException>(() => list["fyl7"]);
        Assert.Equal("name", exception.ParamName);
        Assert.StartsWith("'Half' has no capacitor 'fyl7'. Did you mean 'fly7'?", exception.Message, StringComparison.Ordinal);
        Assert.StartsWith("'Half' has no capacitor 'other'. It has fly0, fly1.", Assert.Throws<ArgumentException>(() => Of(2).PositionOf("other")).Message, StringComparison.Ordinal);
        Assert.StartsWith("'Half' has no capacitor 'other'. (", Assert.Throws<ArgumentException>(() => list["other"]).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>(() => list[null!]);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(3)]
    public void A_position_that_does_not_exist_is_out_of_range(int position)
    {
        ArgumentOutOfRangeException exception = Assert.Throws<ArgumentOutOfRangeException>(() => Of(3)[position]);
        Assert.Equal(position, exception.ActualValue);
        Assert.StartsWith("Expected a position from 0 to 2.", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void It_reads_as_its_entries() => Assert.Equal("[0, 1, 2]", Of(3).ToString());

    [Fact]
    public void Phases_count_from_one()
    {
        PerPhase<int> phases = new([10, 20], new NameIndex("Half", "phase", ["charge", "discharge"]));
        Assert.Equal([10, 20], phases);
        Assert.Equal(2, phases.PhaseCount);
        Assert.Equal((10, 20), (phases[1], phases[2]));
        Assert.Equal(20, phases["discharge"]);
        Assert.Throws<ArgumentOutOfRangeException>(() => phases[0]);
        Assert.Throws<ArgumentOutOfRangeException>(() => phases[3]);
        Assert.Throws<ArgumentException>(() => phases["1"]);
        Assert.Equal("[10, 20]", phases.ToString());
    }

    private static NamedList<int> Of(int count) =>
        new([.. Enumerable.Range(0, count)], new NameIndex("Half", "capacitor", [.. Enumerable.Range(0, count).Select(i => $"fly{i}")]));
}
