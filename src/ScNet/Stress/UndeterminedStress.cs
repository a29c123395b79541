namespace ScNet.Stress;

/// <summary>A place at which nothing bounds the voltage of an element, and why.</summary>
internal sealed class UndeterminedStress
{
    public UndeterminedStress(Mode mode, Mode? from, int? phase, IReadOnlyList<Capacitor> idle, IReadOnlyList<string> floating)
    {
        Mode = mode;
        From = from;
        Phase = phase;
        IdleCapacitors = idle;
        FloatingNodes = floating;
    }

    /// <summary>The mode; at a change of mode, the new one.</summary>
    public Mode Mode { get; }

    /// <summary>At a change of mode, the old one; else null.</summary>
    public Mode? From { get; }

    /// <summary>The phase number from 1; null for a capacitor, whose voltage is the same in all.</summary>
    public int? Phase { get; }

    /// <summary>The capacitors of unknown voltage that it depends on, in the converter's order: no mode fixes their voltage, or too many of them idle at once.</summary>
    public IReadOnlyList<Capacitor> IdleCapacitors { get; }

    /// <summary>The nodes of the element that nothing ties to the reference and nothing bounds, where no idle capacitor is the reason.</summary>
    public IReadOnlyList<string> FloatingNodes { get; }

    /// <summary>"mode 1/3, phase 2, as fly3 idles".</summary>
    public override string ToString() => StressPlace.Text(Mode, From, Phase) + Reason;

    /// <summary>"undetermined in mode 1/3, phase 2, as fly3 idles", and how many more such places there are.</summary>
    public static string Text(IReadOnlyList<UndeterminedStress> places) => places.Count switch
    {
        0 => "undetermined",
        1 => $"undetermined in {places[0]}",
        _ => $"undetermined in {places[0]}, and in {UnitText.Count(places.Count - 1, "other place", "other places")}",
    };

    /// <summary>Whether the mode brings these capacitors to voltages of their own, which only losses fix, instead of leaving them idle.</summary>
    public bool IsLeftToLosses { get; init; }

    private string Reason => IsLeftToLosses
        ? UnitText.Names(", as only losses fix ", [.. IdleCapacitors.Select(c => c.Name)])
        : IdleCapacitors.Count > 0 ? UnitText.Names(", as ", [.. IdleCapacitors.Select(c => c.Name)], IdleCapacitors.Count == 1 ? " idles" : " idle")
        : UnitText.Names(", as ", FloatingNodes, FloatingNodes.Count == 1 ? " floats" : " float");
}
