using System.Runtime.CompilerServices;
using ScNet.Design.Losses;

namespace ScNet.Design.Regulation;

/// <summary>A mode at an operating point at which it is meant to hold its output. A value: maps hold many.</summary>
public readonly struct RegulatedPoint
{
    private readonly LossWatts _losses;

    /// <summary>States a point.</summary>
    /// <param name="outcome">Whether the voltage is held.</param>
    /// <param name="frequencyHz">The switching frequency in hertz (Hz), the effective one where cycles are left out; 0 for a linear regulator.</param>
    /// <param name="duty">The duty that regulates; NaN where none does.</param>
    /// <param name="outputWatts">The output power in watts (W).</param>
    /// <param name="losses">The loss of each kind in watts (W), by the number of the kind.</param>
    /// <param name="runningShare">The share of the cycles that run, above 0 and at most 1.</param>
    public RegulatedPoint(RegulationOutcome outcome, double frequencyHz, double duty, double outputWatts, ReadOnlySpan<double> losses, double runningShare = 1)
    {
        RunningShare = runningShare;
        (Outcome, FrequencyHz, Duty, OutputWatts) = (outcome, frequencyHz, duty, outputWatts);
        losses.CopyTo(_losses);
    }

    /// <summary>Whether the voltage is held, and if not, why.</summary>
    public RegulationOutcome Outcome { get; }

    /// <summary>Whether the voltage is held.</summary>
    public bool IsHeld => Outcome is RegulationOutcome.Held or RegulationOutcome.HeldBySkipping or RegulationOutcome.HeldByDropping;

    /// <summary>The switching frequency in hertz (Hz), the effective one where cycles are left out.</summary>
    public double FrequencyHz { get; }

    /// <summary>The share of the cycles that run: 1 but where some are left out. Those that run come at <see cref="FrequencyHz"/> over it and carry the load current over it.</summary>
    public double RunningShare { get; }

    /// <summary>The duty that regulates; NaN where none does.</summary>
    public double Duty { get; }

    /// <summary>The output power in watts (W).</summary>
    public double OutputWatts { get; }

    /// <summary>The loss of a kind in watts (W); of no meaning where the voltage is not held.</summary>
    /// <param name="kind">The kind.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kind.</exception>
    public double LossOf(LossKind kind) => Enum.IsDefined(kind) ? _losses[(int)kind] : throw new ArgumentOutOfRangeException(nameof(kind), kind, "Expected a kind of loss that exists.");

    /// <summary>All losses in watts (W).</summary>
    public double TotalLossWatts
    {
        get
        {
            double sum = 0;
            foreach (double loss in (ReadOnlySpan<double>)_losses)
            {
                sum += loss;
            }

            return sum;
        }
    }

    /// <summary>The input power in watts (W).</summary>
    public double InputWatts => OutputWatts + TotalLossWatts;

    /// <summary>Output over input power.</summary>
    public double Efficiency => OutputWatts / InputWatts;

    /// <summary>Outcome, frequency or duty, and efficiency.</summary>
    public override string ToString() => IsHeld
        ? FormattableString.Invariant($"{Words}: {Setting}{Efficiency * 100:F1} %")
        : Words;

    private string Words => Outcome switch
    {
        RegulationOutcome.Held => "held",
        RegulationOutcome.HeldBySkipping => "held by skipping cycles",
        RegulationOutcome.HeldByDropping => "held by dropping the surplus",
        RegulationOutcome.RatioTooLow => "ratio too low",
        RegulationOutcome.ImpedanceTooHigh => "output impedance too high",
        _ => "duty out of range",
    };

    // a linear regulator has neither
    private string Setting => !double.IsNaN(Duty) ? FormattableString.Invariant($"duty {Duty:G4}, ") : FrequencyHz > 0 ? $"{EngineeringNumber.Of(FrequencyHz, "Hz")}, " : string.Empty;

    [InlineArray(LossModel.KindCount)]
    private struct LossWatts
    {
        private double _first;
    }
}
