namespace ScNet.Tests.Contract;

/// <summary>The calls find what they are there to find.</summary>
public sealed class HostileCallsTests
{
    [Fact]
    public void Every_kind_of_misbehaviour_is_found_and_nothing_that_behaves()
    {
        HostileCalls calls = HostileCalls.On([typeof(Misbehaving), typeof(Behaving)], [new Misbehaving(1), new Behaving(1)], ["name"], new Dictionary<string, string> { ["Misbehaving.Skipped"] = "shown to be left out", ["Misbehaving.Never"] = "is not there" });
        Assert.Equal(
            [
                "Misbehaving.Bare", "Misbehaving.Cast", "Misbehaving.Divide", "Misbehaving.First", "Misbehaving.Index", "Misbehaving.Lazy", "Misbehaving.Overflow", "Misbehaving.Root",
                "Misbehaving.Swallow", "Misbehaving.Trim", "Misbehaving.Wrap", "Misbehaving.get_Share", "Misbehaving.set_Share",
            ],
            calls.Faults.Select(f => f.Split('(')[0]).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(["Misbehaving.Bare", "Misbehaving.Refusing"], calls.Unanswered);
        Assert.Equal(["Misbehaving.Never"], calls.NeverSkipped);
    }

    public sealed class Misbehaving(double value)
    {
        private double _value = value;

        public double Share { get => _value; set => _value = value > 0 ? value : throw new InvalidOperationException(); }

        public static int Trim(string text) => text.Trim().Length;

        public static char First(string text) => text?.First() ?? ' ';

        public static int Index(int[] items) => items is null ? throw new ArgumentNullException(nameof(items)) : items[0];

        public static int Divide(int by) => 1 / by;

        public static int Overflow(int value) => checked(value + 1);

        public static double Root(double value) => Math.Sqrt(value);

        public static string Cast(object value) => value is null ? throw new ArgumentNullException(nameof(value)) : (string)value;

        public static void Wrap(Func<int> callback)
        {
            ArgumentNullException.ThrowIfNull(callback);
            Task.Run(callback).Wait();
        }

        // a cancelled token has nothing to do with a failure
        public static void Swallow(bool isDone, CancellationToken token) => _ = isDone ? throw new OperationCanceledException(token) : 0;

        public static IEnumerable<int> Lazy(string text)
        {
            yield return text.Length;
        }

        public static void Bare() => throw new NotSupportedException();

        public static void Refusing() => throw new ArgumentException("always");

        public static void Skipped() => throw new NotSupportedException();
    }

    public sealed class Behaving
    {
        public Behaving(double value)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value);
            Value = double.IsNaN(value) ? throw new ArgumentOutOfRangeException(nameof(value)) : value;
        }

        public double Value { get; }

        public static int Run(Func<int> callback, CancellationToken token)
        {
            ArgumentNullException.ThrowIfNull(callback);
            token.ThrowIfCancellationRequested();
            return callback();
        }

        public static long Read(Stream stream)
        {
            ArgumentNullException.ThrowIfNull(stream);
            return stream.ReadByte();
        }
    }
}
