using ScNet.Analysis;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Pages;

/// <summary>One formula of a mode in every form in which it can be written.</summary>
/// <param name="Symbol">What it is of, such as "R_SSL".</param>
/// <param name="Text">What stands right of the equals sign; null where there is none.</param>
/// <param name="Reason">Why there is none; empty where there is one.</param>
/// <param name="Latex">The equation in TeX's math language, without delimiters; the reason where there is none.</param>
/// <param name="MathML">The equation in MathML Core; the reason where there is none.</param>
public sealed record Formula(string Symbol, string? Text, string Reason, string Latex, string MathML)
{
    /// <summary>The formulas of a mode: ratio, output voltage, both limits and their losses, voltages of capacitors, and the largest that switches block.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="hasEqualComponents">Whether all capacitors, and all switches, count as equal.</param>
    public static IReadOnlyList<Formula> Of(ModeAnalysis analysis, bool hasEqualComponents = false)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ClosedForms forms = ClosedForms.Of(analysis);
        return Of(hasEqualComponents ? forms.WithEqualComponents() : forms);
    }

    internal static IReadOnlyList<Formula> Of(ClosedForms forms)
    {
        Converter converter = forms.Analysis.Converter;
        ClosedForm[] all =
        [
            forms.Ratio, forms.OutputVoltage,
            forms.ChargeSharing ?? forms.SlowSwitchingLimit, forms.FastSwitchingLimit, forms.ChargeSharingLoss ?? forms.SlowSwitchingLoss, forms.FastSwitchingLoss,
            .. converter.Capacitors.Select(c => forms.CapacitorVoltage(c.Name)),
            .. converter.Switches.Select(s => forms.PeakBlockingVoltage(s.Name)),
        ];
        return [.. all.Select(Of)];
    }

    /// <summary>The same of what depends on the duties alone: ratio, voltages of capacitors and currents of inductors.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="phase">The phase, from 1, whose duty is the only free one; null for all phases.</param>
    /// <exception cref="ScNetException">There are too many phases or elements for functions of the duties.</exception>
    public static IReadOnlyList<Formula> OfDuties(ModeAnalysis analysis, int? phase = null)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return Of(phase is { } number ? DutyForms.Of(analysis, number) : DutyForms.Of(analysis));
    }

    internal static IReadOnlyList<Formula> Of(DutyForms forms)
    {
        DutyForm[] all =
        [
            forms.Ratio,
            .. forms.Analysis.Converter.Capacitors.Select(c => forms.CapacitorVoltage(c.Name)),
            .. forms.Analysis.Converter.Inductors.Select(l => forms.InductorCurrent(l.Name)),
        ];
        return [.. all.Select(Of)];
    }

    internal static Formula Of(ClosedForm form) => new(form.Symbol.ToString(), form.Expression?.ToString(), form.Reason, form.ToLatex(), form.ToMathML());

    internal static Formula Of(DutyForm form) => new(form.Symbol.ToString(), form.Expression?.ToString(), form.Reason, form.ToLatex(), form.ToMathML());

    /// <summary>The equation, or the reason why there is none.</summary>
    public override string ToString() => Text is null ? Reason : $"{Symbol} = {Text}";
}
