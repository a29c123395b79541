using Fractions;
using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Design.Regulation;

/// <summary>Makes what holds an output voltage. Derivation of all of it: docs/theory/regulation.md.</summary>
public static class RegulatedModes
{
    /// <summary>A mode of a switched-capacitor converter, held by its frequency.</summary>
    /// <param name="model">The losses of the mode.</param>
    /// <param name="frequencyHz">Floor and ceiling of the frequency in hertz (Hz): below the floor cycles are left out, the ceiling is not passed.</param>
    /// <remarks>
    /// Costs some hundred exact impedances; afterwards a point costs some polynomials. The impedance that is used is exact to
    /// 1e-11 of itself, the output voltage to 1e-10 of itself down to an efficiency of a tenth.
    /// </remarks>
    /// <exception cref="ArgumentException">The converter has an inductor, whose duty regulates.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The range is no range of frequencies.</exception>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public static RegulatedMode OfFrequency(LossModel model, Interval<double> frequencyHz)
    {
        ArgumentNullException.ThrowIfNull(model);
        return model.Analysis.Converter.Inductors.Count == 0
            ? new FrequencyMode(model, frequencyHz)
            : throw new ArgumentException($"'{model.Analysis.Converter.Name}' has an inductor, so its duty regulates.", nameof(model));
    }

    /// <summary>A stage with an inductor, held by its duty at one frequency; at a light load it rests between bursts.</summary>
    /// <param name="name">The name, for people.</param>
    /// <param name="stageAtDuty">The losses of the stage built for a duty; asked at some tens of duties, the same sizes each time.</param>
    /// <param name="duty">The range of the duty, between 0 and 1.</param>
    /// <param name="frequencyHz">The switching frequency in hertz (Hz).</param>
    /// <param name="breaks">Duties at which phases appear, vanish or change their order, such as the multiples of 1/(n - 1) of an n-level stage; null where there are none.</param>
    /// <remarks>
    /// Ratio, fast limit and charge sharing count, as averages and straight lines have them; what the exact periodic solution adds shrinks with
    /// the square of the ripple. A point costs some microseconds.
    /// </remarks>
    /// <exception cref="ArgumentException">The stage carries no load at some duty, or averages do not fix its ratio.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The range or the frequency is none.</exception>
    public static RegulatedMode OfDuty(
        string name, Func<Fraction, LossModel> stageAtDuty, Interval<double> duty, double frequencyHz, IReadOnlyList<double>? breaks = null)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(stageAtDuty);
        if (!(duty.IsDetermined && duty.Minimum >= 0 && duty.Minimum <= duty.Maximum && duty.Maximum <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(duty), duty, "Expected a range of duties that is determined, between 0 and 1.");
        }

        return new DutyMode(name, stageAtDuty, duty, frequencyHz, breaks ?? []);
    }

    /// <summary>A linear regulator without a dropout voltage.</summary>
    /// <param name="control">What its control draws; it has no cycles, so a charge per cycle counts for nothing.</param>
    public static RegulatedMode Linear(ControlOverhead control)
    {
        ArgumentNullException.ThrowIfNull(control);
        return new LinearMode(control);
    }
}
