using ScNet.Derivations.Expressions;
using ScNet.Results.Pages;

namespace ScNet.Derivations.Pages;

/// <summary>The formulas of a mode, as a person reads them.</summary>
public static class FormulaPage
{
    /// <summary>The page of the closed forms of a mode.</summary>
    /// <param name="forms">The closed forms.</param>
    public static Page Of(ClosedForms forms)
    {
        ArgumentNullException.ThrowIfNull(forms);
        return Of(null, forms.Analysis.Converter, forms.Analysis.Mode, new FormulaList(Formula.Of(forms), []));
    }

    /// <summary>The page of the functions of the duties of a mode.</summary>
    /// <param name="forms">The functions.</param>
    public static Page Of(DutyForms forms)
    {
        ArgumentNullException.ThrowIfNull(forms);
        return Of(null, forms.Analysis.Converter, forms.Analysis.Mode, new FormulaList([], Formula.Of(forms)));
    }

    /// <summary>The page of some closed forms, of whatever modes.</summary>
    /// <param name="forms">The forms.</param>
    public static Page Of(IReadOnlyList<ClosedForm> forms)
    {
        forms = Guard.Copy(forms, nameof(forms));
        return new Page("Closed forms", Blocks([.. forms.Select(Formula.Of)]));
    }

    /// <summary>The page of some functions of the duties, of whatever modes.</summary>
    /// <param name="forms">The functions.</param>
    public static Page Of(IReadOnlyList<DutyForm> forms)
    {
        forms = Guard.Copy(forms, nameof(forms));
        return new Page("Functions of the duties", Blocks([.. forms.Select(Formula.Of)]));
    }

    /// <summary>The page of one mode.</summary>
    /// <param name="file">The file as the caller named it, or null where there is none.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="converter">Its converter.</param>
    /// <param name="formulas">The formulas.</param>
    public static Page Of(string? file, Converter converter, Mode mode, FormulaList formulas)
    {
        ArgumentNullException.ThrowIfNull(converter);
        ArgumentNullException.ThrowIfNull(mode);
        ArgumentNullException.ThrowIfNull(formulas);
        string path = file is null ? string.Empty : $" ({file})", name = converter.Modes.Count > 1 ? $", mode {mode}" : string.Empty;
        return new Page(
            $"{converter.Name}{path}{name}: closed forms",
            [
                .. Blocks(formulas.Formulas),
                .. formulas.OfDuties.Count > 0 ? [new PageHeading("Functions of the duties", level: 2), .. Blocks(formulas.OfDuties)] : Array.Empty<PageBlock>(),
            ]);
    }

    private static IEnumerable<PageBlock> Blocks(IReadOnlyList<Formula> formulas)
    {
        if (formulas.Any(f => f.Text is not null))
        {
            yield return new PageFigures(formulas.Where(f => f.Text is not null).Select(f => new PageFigure(f.Symbol, f.Text!)));
        }

        if (formulas.Any(f => f.Text is null))
        {
            yield return new PageRemarks(formulas.Where(f => f.Text is null).Select(f => f.Reason));
        }
    }
}
