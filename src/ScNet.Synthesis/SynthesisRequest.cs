using ScNet.Stress;

namespace ScNet.Synthesis;

/// <summary>What a reconfigurable converter of two phases is to do, and within what limits.</summary>
/// <param name="Ratios">The ratios, each once.</param>
/// <param name="CapacitorCount">The number of flying capacitors, at most <see cref="MostCapacitors"/>.</param>
public sealed record SynthesisRequest(IReadOnlyList<WantedRatio> Ratios, int CapacitorCount)
{
    /// <summary>The largest number of flying capacitors.</summary>
    public const int MostCapacitors = 3;

    /// <summary>The largest number of devices in a stack that can be asked for.</summary>
    public const int DeepestStack = 8;

    /// <summary>The ratios, each once; a list of its own, which nobody changes.</summary>
    public IReadOnlyList<WantedRatio> Ratios { get; init => field = value is null ? [] : Array.AsReadOnly([.. value]); } =
        Ratios is null ? [] : Array.AsReadOnly([.. Ratios]);

    /// <summary>What there is to be least of.</summary>
    public SynthesisCost Cost { get; init; }

    /// <summary>
    /// Of what the converter is to lose least among those that cost no more, or only so much more, than the least; null where any of least cost will do. Not together with
    /// <see cref="HoldsAtChanges"/>.
    /// </summary>
    public LossAim? LeastLoss { get; init; }

    /// <summary>What one device blocks, in volts (V); null where switches may block anything.</summary>
    public double? SwitchRatingVolts { get; init; }

    /// <summary>The most devices in a stack.</summary>
    public int LargestStack { get; init; } = 1;

    /// <summary>What a capacitor stands, in volts (V); null where it may hold anything.</summary>
    public double? CapacitorRatingVolts { get; init; }

    /// <summary>Whether every switch is to block in one direction only, over all phases of all ratios, so that a single transistor with its body diode does.</summary>
    public bool BlocksOneWay { get; init; }

    /// <summary>
    /// Whether ratings of switches, and their one direction where it is asked for, also hold right after a change from any
    /// ratio to any other, while the capacitors still have the voltages of the old one: see <see cref="ConverterStress.Changes"/>.
    /// </summary>
    public bool HoldsAtChanges { get; init; }

    /// <summary>
    /// The most work in deterministic units of the solver, roughly seconds of one core; the same number gives the same
    /// answer on every run.
    /// </summary>
    public double LargestEffort { get; init; } = 60;
}
