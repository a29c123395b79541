namespace ScNet.Design.Sizing;

/// <summary>The best sizes at one area.</summary>
public sealed class TradeOffPoint
{
    internal TradeOffPoint(AreaBudget area, double squareMetres, SizingOutcome outcome)
    {
        Area = area;
        Outcome = outcome;
        SizedDesign? all = outcome.Unreachable.Count == 0 ? outcome.Design : null;
        Efficiency = all?.Efficiency;
        WattsPerSquareMetre = all is null ? null : all.Points.Max(p => p.OutputWatts) / squareMetres;
    }

    /// <summary>The area allowed.</summary>
    public AreaBudget Area { get; }

    /// <summary>The sizes, or why there are none.</summary>
    public SizingOutcome Outcome { get; }

    /// <summary>The largest output power of the points over the area in watts per square metre (W/m²); null where a point is not reached. 1e6 W/m² is 1 W/mm².</summary>
    public double? WattsPerSquareMetre { get; }

    /// <summary>Weighted output per weighted input power; null where a point is not reached.</summary>
    public double? Efficiency { get; }

    /// <summary>Area, density and efficiency.</summary>
    public override string ToString() => Efficiency is { } efficiency
        ? $"{Area}: {UnitText.Of(WattsPerSquareMetre * 1e-6, "W/mm²")}, {UnitText.Percent(efficiency)}"
        : $"{Area}: not all points are reached";
}
