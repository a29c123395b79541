namespace ScNet.Design.Sizing;

/// <summary>A point at which no sizes within the area hold the output.</summary>
public sealed class UnreachablePoint
{
    internal UnreachablePoint(SizingPoint point, double neededOhms, double? leastOhms, bool isAlone)
    {
        Point = point;
        NeededOhms = neededOhms;
        LeastOhms = leastOhms;
        IsAlone = isAlone;
    }

    /// <summary>The point.</summary>
    public SizingPoint Point { get; }

    /// <summary>The output impedance in ohms (Ω) that would hold the output; not above zero where the ratio is too low.</summary>
    public double NeededOhms { get; }

    /// <summary>The least that area and ceiling of the frequency allow, in ohms (Ω); null where the ratio is too low.</summary>
    public double? LeastOhms { get; }

    /// <summary>Whether it cannot be reached even by sizes that serve this point alone; if not, the others stand against it.</summary>
    public bool IsAlone { get; }

    /// <summary>Why, with figures.</summary>
    public string Reason => LeastOhms is not { } least ? "the ratio is too low, even without load"
        : IsAlone ? $"needs R_out ≤ {UnitText.Of(NeededOhms, "Ω")}, area and highest frequency allow {UnitText.Of(least, "Ω")}"
        : $"needs R_out ≤ {UnitText.Of(NeededOhms, "Ω")}, sizes that serve the other points too allow {UnitText.Of(least, "Ω")}";

    /// <summary>The point and the reason.</summary>
    public override string ToString() => $"{Point}: {Reason}";
}
