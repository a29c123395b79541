using System.Reflection;

namespace ScNet.Tests.Contract;

/// <summary>The walk finds what it is there to find.</summary>
public sealed class ObjectWalkTests
{
    [Fact]
    public void Every_kind_of_fault_is_found()
    {
        ObjectWalk walk = ObjectWalk.From([Assembly.GetExecutingAssembly()], new Faulty());
        Assert.Equal(
            [
                "Faulty.Array hands out a Int32[]",
                "Faulty.List hands out a List`1",
                "Faulty.Map hands out a Dictionary`2",
                "Faulty.Number is not a number",
                "Faulty.Set hands out a HashSet`1",
                "Faulty.Throwing throws InvalidOperationException",
                "Inner.Names hands out a String[]",
            ],
            walk.Faults);
        Assert.Equal([typeof(Faulty), typeof(Inner)], walk.Types.OrderBy(t => t.Name, StringComparer.Ordinal));
    }

    private sealed class Faulty
    {
        public IReadOnlyList<int> Array { get; } = new[] { 1 };

        public IReadOnlyCollection<int> List { get; } = new List<int> { 1 };

        public IReadOnlySet<int> Set { get; } = new HashSet<int> { 1 };

        public IReadOnlyDictionary<int, int> Map { get; } = new Dictionary<int, int> { [1] = 1 };

        public double Number { get; } = double.NaN;

        public int Throwing => Sound.Count > 0 ? throw new InvalidOperationException("no value") : 0;

        public IReadOnlyList<int> Sound { get; } = [1, 2];

        public IReadOnlyList<int> Wrapped { get; } = System.Array.AsReadOnly([1, 2]);

        public IReadOnlyList<Inner> Members { get; } = [new Inner(), new Inner()];
    }

    private sealed class Inner
    {
        public IEnumerable<string> Names { get; } = new[] { "a" };
    }
}
