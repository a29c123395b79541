namespace ScNet.Reporting.Charts.Plotting;

/// <summary>One axis of a chart: its range, ticks with units, and title.</summary>
internal sealed class ChartAxis
{
    private ChartAxis(string title, double minimum, double maximum, bool isLogarithmic, IReadOnlyList<AxisTick> ticks, IReadOnlyList<double> between)
    {
        Title = title;
        (Minimum, Maximum, IsLogarithmic) = (minimum, maximum, isLogarithmic);
        Ticks = ticks;
        TicksBetween = between;
    }

    /// <summary>What is shown along it.</summary>
    public string Title { get; }

    public double Minimum { get; }

    public double Maximum { get; }

    public bool IsLogarithmic { get; }

    /// <summary>The ticks that have a text.</summary>
    public IReadOnlyList<AxisTick> Ticks { get; }

    /// <summary>The places of shorter ticks without text.</summary>
    public IReadOnlyList<double> TicksBetween { get; }

    /// <summary>An axis with equal steps.</summary>
    /// <param name="title">What is shown along it.</param>
    /// <param name="minimum">The least value.</param>
    /// <param name="maximum">The largest value.</param>
    /// <param name="unit">The unit; "%" takes no prefix.</param>
    /// <param name="steps">About how many steps.</param>
    /// <param name="isExtended">Whether both ends move outwards to the next tick.</param>
    public static ChartAxis Linear(string title, double minimum, double maximum, string unit, int steps = 5, bool isExtended = true)
    {
        (double low, double high, IReadOnlyList<AxisTick> ticks) = LinearTicks.Of(minimum, maximum, unit, steps, isExtended);
        return new ChartAxis(title, low, high, false, ticks, []);
    }

    /// <summary>An axis on which equal factors are equally long; its title says so.</summary>
    public static ChartAxis Logarithmic(string title, double minimum, double maximum, string unit, int mostTexts = 7)
    {
        (IReadOnlyList<AxisTick> ticks, IReadOnlyList<double> between) = LogarithmicTicks.Of(minimum, maximum, unit, mostTexts);
        return new ChartAxis($"{title}, log scale", minimum, maximum, true, ticks, between);
    }

    /// <summary>An axis of a range with the ticks given.</summary>
    public static ChartAxis Of(double minimum, double maximum, params IReadOnlyList<AxisTick> ticks) => new(string.Empty, minimum, maximum, false, ticks, []);

    /// <summary>The same axis without texts, for a panel above another one.</summary>
    public ChartAxis WithoutText() => new(string.Empty, Minimum, Maximum, IsLogarithmic, [.. Ticks.Select(t => t with { Label = string.Empty })], TicksBetween);

    /// <summary>What is drawn for a value: itself, or its logarithm.</summary>
    public double Coordinate(double value) => IsLogarithmic ? Math.Log10(value) : value;

    /// <summary>Where a value lies: 0 at the minimum, 1 at the maximum.</summary>
    public double ShareOf(double value) => (Coordinate(value) - Coordinate(Minimum)) / (Coordinate(Maximum) - Coordinate(Minimum));
}
