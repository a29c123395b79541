using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Regulation;

namespace ScNet.Design.Choice;

/// <summary>A candidate that does what is required, with its sizes and what it makes of the energy.</summary>
public sealed class RankedCandidate
{
    // below it there is nothing but rounding
    private const double LeastGap = 1e-6;

    private readonly CandidateDesign _design;

    internal RankedCandidate(int rank, CandidateDesign design, IReadOnlyList<string> reasons)
    {
        Rank = rank;
        _design = design;
        Reasons = [.. reasons];
    }

    /// <summary>The place, from 1.</summary>
    public int Rank { get; }

    /// <summary>The candidate.</summary>
    public Candidate Candidate => _design.Candidate;

    /// <summary>The converter with its devices, at one of its duties where these regulate; null for a linear regulator.</summary>
    public SizedConverter? Sized => _design.Sized;

    /// <summary>The modes that serve some point, each with what holds its output.</summary>
    public IReadOnlyList<RegulatedMode> Modes => _design.Modes;

    /// <summary>What it makes of the energy over the discharge and the profile of the load.</summary>
    public LifeEstimate Life => _design.Life;

    /// <summary>The share of the time in each of <see cref="Modes"/>.</summary>
    public IReadOnlyList<double> SharesOfModes => Life.ModeShares;

    /// <summary>Hours that the cell lasts; null where the requirement names no charge.</summary>
    public double? LifeHours => Life.Hours;

    /// <summary>Average power in watts (W) into the load, over discharge and time.</summary>
    public double OutputWatts => Life.OutputWatts!.Value;

    /// <summary>Average power in watts (W) into the converter, over discharge and time.</summary>
    public double InputWatts => Life.InputWatts!.Value;

    /// <summary>Average loss in watts (W).</summary>
    public double LossWatts => InputWatts - OutputWatts;

    /// <summary>Output over input energy.</summary>
    public double Efficiency => OutputWatts / InputWatts;

    /// <summary>What it does in each state of the load, as in the requirement.</summary>
    public IReadOnlyList<LoadBudget> Loads => Life.Loads;

    /// <summary>The area that it takes on the chip in square metres (m²).</summary>
    public double AreaSquareMetres => Sized?.AreaSquareMetres ?? 0;

    /// <summary>By how much of itself the loss at the points for which it is sized may be lowered at most by other sizes of the same kinds, a power of ten that is not below it; null for a linear regulator.</summary>
    public double? RelativeGap => _design.RelativeGap is { } gap ? Math.Pow(10, Math.Ceiling(Math.Log10(Math.Max(gap, LeastGap)))) : null;

    /// <summary>The number of equal parts, of the same area together, that work one after the other so that the ripple is as small as it may be; 1 where it is anyhow, or is not limited.</summary>
    public int Parts => _design.Ripple?.Parts ?? 1;

    /// <summary>The largest ripple of the output, peak to peak, in volts (V), of so many parts; null where the requirement limits none, or there are no cycles.</summary>
    public double? RippleVolts => _design.Ripple?.Volts;

    /// <summary>Why it has its place: where it loses most against the one before it and the first one, and which elements take stacks.</summary>
    public IReadOnlyList<string> Reasons { get; }

    /// <summary>The netlist document with these sizes to six digits, and what each element is made of as remarks; null for a linear regulator.</summary>
    public string? ToToml() => Sized is { } sized
        ? Sizing.SizedNetlist.Of(new SizedConverter(SixDigits.Of(sized.Converter), sized.Switches, sized.Capacitors, sized.Inductors, sized.Process))
        : null;

    /// <summary>Place, name, life and efficiency.</summary>
    public override string ToString() =>
        $"{Rank}. {Candidate}: {(LifeHours is { } hours ? $"{UnitText.Of(hours, "h")}, " : string.Empty)}{UnitText.Percent(Efficiency)}";

    /// <summary>How it came about.</summary>
    internal CandidateDesign Design => _design;
}
