using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

public sealed class ScratchTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(3)]
    public void As_many_values_as_the_small_room_holds_are_there(int count)
    {
        int[] small = [7, 8, 9];
        Span<int> room = Scratch.Of(count, small.AsSpan());
        Assert.Equal(count, room.Length);
        room.Fill(1);
        Assert.Equal([.. Enumerable.Repeat(1, count), .. new[] { 7, 8, 9 }[count..]], small);
    }

    [Fact]
    public void More_have_room_of_their_own_with_nothing_in_it()
    {
        int[] small = [7, 8, 9];
        Span<int> room = Scratch.Of(4, small.AsSpan());
        Assert.Equal(new int[4], room.ToArray());
        room.Fill(1);
        Assert.Equal([7, 8, 9], small);
    }
}
