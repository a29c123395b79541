using ScNet.Stress;

namespace ScNet.Devices;

/// <summary>What the gate of one switch needs in one phase in which it is closed.</summary>
public sealed class GatePhase
{
    private readonly Lazy<IReadOnlyList<GateSupply>> _supplies;

    internal GatePhase(
        Mode mode, int phase, VoltageSpan source, Interval<double> gateVolts, bool hasSupply, Func<IReadOnlyList<GateSupply>> supplies)
    {
        Mode = mode;
        Phase = phase;
        SourcePotential = source;
        GateVolts = gateVolts;
        HasSupply = hasSupply;
        _supplies = new(supplies);
    }

    /// <summary>The mode.</summary>
    public Mode Mode { get; }

    /// <summary>The phase number, from 1.</summary>
    public int Phase { get; }

    /// <summary>The potential of both terminals, per volt of input: bounds where they float.</summary>
    public VoltageSpan SourcePotential { get; }

    /// <summary>The gate levels against the reference in volts (V) that the switch needs over the input range: source plus (p-type: minus) the drive voltage; undetermined where the source is.</summary>
    public Interval<double> GateVolts { get; }

    /// <summary>
    /// The nodes whose potential turns the switch on and keeps the gate rating, at least at some input voltage of the
    /// range; in the converter's order. Listed when first asked for, in a time of those found.
    /// </summary>
    public IReadOnlyList<GateSupply> Supplies => _supplies.Value;

    /// <summary>Whether one of them does so over the whole range.</summary>
    public bool HasSupply { get; }

    /// <summary>The phase, the source and the supplies; those that serve in a part of the range where none serves in all of it.</summary>
    public override string ToString() => $"mode {Mode}, phase {Phase}: source {SourcePotential}, gate {GateVolts.ToString("V")}, {SupplyText}";

    private string SupplyText => HasSupply ? string.Join(", ", Supplies.Where(s => s.CoversRange))
        : Supplies.Count > 0 ? $"{string.Join(", ", Supplies)}, own rail elsewhere"
        : "own rail";
}
