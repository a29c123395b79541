using ScNet.Search;
using ScNet.Stress;

namespace ScNet.Synthesis;

/// <summary>The smallest converter for a request, and what is proved of it.</summary>
public sealed class SynthesisResult
{
    internal SynthesisResult(SynthesisRequest request, SynthesisOutcome outcome, string? reason, int? bound, double effort)
    {
        Request = request;
        Outcome = outcome;
        Reason = reason;
        Bound = bound;
        Effort = effort;
    }

    /// <summary>What was asked.</summary>
    public SynthesisRequest Request { get; }

    /// <summary>What came of it.</summary>
    public SynthesisOutcome Outcome { get; }

    /// <summary>Why there is none; null unless <see cref="SynthesisOutcome.NoneExists"/>.</summary>
    public string? Reason { get; }

    /// <summary>What every converter costs at least; null where none exists.</summary>
    public int? Bound { get; }

    /// <summary>The work that was done, in deterministic units of the solver, roughly seconds of one core.</summary>
    public double Effort { get; }

    /// <summary>
    /// The converter, a mode per ratio that bears its name; capacitances and on-resistances are 1. Null where none
    /// exists or none was found.
    /// </summary>
    public Converter? Converter { get; internal init; }

    /// <summary>What it costs, in the unit of <see cref="SynthesisRequest.Cost"/>; null without a converter.</summary>
    public int? Cost { get; internal init; }

    /// <summary>Its stress at the highest input voltage of each ratio, by which ratings were checked; null without a converter.</summary>
    public ConverterStress? Stress { get; internal init; }

    /// <summary>The devices of each switch, by position and by name as in <see cref="Converter.Switches"/>; null without a converter.</summary>
    public NamedList<int>? Devices { get; internal init; }

    /// <summary>Per ratio the wirings of its phases that were chosen, over the converter's capacitors; null without a converter.</summary>
    public IReadOnlyList<IReadOnlyList<Wiring>>? Wirings { get; internal init; }

    /// <summary>The outcome in a line.</summary>
    public override string ToString()
    {
        string ratios = string.Join(", ", Request.Ratios.Select(r => r.Ratio));
        string found = Converter is null
            ? "none found"
            : $"{UnitText.Count(Converter.Switches.Count, "switch", "switches")}, {UnitText.Count(Devices!.Sum(), "device", "devices")}";
        return Outcome switch
        {
            SynthesisOutcome.Proved => $"{ratios}: {found}, proved least",
            SynthesisOutcome.NoneExists => $"{ratios}: {Reason}",
            _ => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{ratios}: {found}, at least {Bound} in {Request.Cost}"),
        };
    }
}
