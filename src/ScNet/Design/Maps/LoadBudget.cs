using ScNet.Design.Losses;
using ScNet.Design.Requirements;

namespace ScNet.Design.Maps;

/// <summary>What becomes of the energy in one state of the load, on average over the discharge.</summary>
public sealed class LoadBudget
{
    private readonly double[] _watts;

    internal LoadBudget(LoadShare load, double outputWatts, double[] watts)
    {
        Load = load;
        OutputWatts = outputWatts;
        _watts = watts;
        LossWatts = watts.Sum();
    }

    /// <summary>The state of the load; where it is at several output voltages in turn, at the first of these for all of its time.</summary>
    public LoadShare Load { get; }

    /// <summary>Power into the load in watts (W), while it is in this state.</summary>
    public double OutputWatts { get; }

    /// <summary>All losses in watts (W), while it is in this state.</summary>
    public double LossWatts { get; }

    /// <summary>Output over input power in this state.</summary>
    public double Efficiency => OutputWatts / (OutputWatts + LossWatts);

    /// <summary>The loss of a kind in watts (W), while the load is in this state.</summary>
    /// <param name="kind">The kind.</param>
    public double WattsOf(LossKind kind) => _watts[(int)kind];

    /// <summary>State, efficiency and loss.</summary>
    public override string ToString() => $"{Load.Name}: {UnitText.Percent(Efficiency)}, {EngineeringNumber.Of(LossWatts, "W")} lost";
}
