using System.Net;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Choice;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Reporting.Html;

/// <summary>
/// A report in one file of HTML, to read, to send and to print: opens offline, pictures inside, tables that can be put in order,
/// every assumption and caution stated, how each kind of figure came about. Immutable, the same to the byte for the same input.
/// </summary>
/// <remarks>
/// The file loads nothing, and its Content-Security-Policy forbids everything but its own style and script. Names are escaped
/// wherever they stand. It holds no date unless the caller gives one.
/// </remarks>
public sealed class Report
{
    private readonly string _html;

    private Report(ReportContent content)
    {
        Title = content.Title;
        _html = ReportHtml.Of(content);
    }

    /// <summary>What the report is about.</summary>
    public string Title { get; }

    /// <summary>A report of one converter: all its modes with drawings, limits, charges, impedance and stress.</summary>
    /// <param name="analysis">The converter and what came of its modes.</param>
    /// <param name="conditions">At what voltages, load and frequency, made of which devices; null for the converter alone.</param>
    public static Report OfConverter(ConverterAnalysis analysis, ReportConditions? conditions = null)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return new Report(ConverterReport.Of(analysis, conditions ?? new ReportConditions()));
    }

    /// <summary>A report of converters side by side, on common ground.</summary>
    /// <param name="conditions">The conditions of all rows.</param>
    /// <param name="rows">The rows, in their order.</param>
    /// <param name="hasSilicon">Whether the rows are compared at equal silicon too.</param>
    /// <param name="loadAmperes">The load current in amperes (A) at which the rows are compared too; null for none.</param>
    /// <param name="date">The day that the report names; null for none.</param>
    public static Report OfComparison(
        ComparisonConditions conditions, IEnumerable<ResultRow<ComparedMode>> rows, bool hasSilicon = false, double? loadAmperes = null, DateOnly? date = null)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentNullException.ThrowIfNull(rows);
        return new Report(ComparisonReport.Of(conditions, [.. rows], hasSilicon, loadAmperes, date));
    }

    /// <summary>A report of a ranked choice: the order with its reasons, what was rejected and why, the winner in detail.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="sensitivity">What would change the winner; null where that is not asked for.</param>
    /// <param name="date">The day that the report names; null for none.</param>
    public static Report OfDesign(RankedChoice choice, ChoiceSensitivity? sensitivity = null, DateOnly? date = null)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return new Report(DesignReport.Of(choice, sensitivity, date));
    }

    /// <summary>The report as a document of HTML 5, "\n" line ends.</summary>
    public string ToHtml() => _html;

    /// <summary>The report within another page, such as a cell of a notebook: an element of HTML 5 that holds it whole and lets nothing out.</summary>
    public string ToFrame() =>
        $"<iframe title=\"{HtmlText.Of(Title)}\" sandbox=\"allow-scripts\" style=\"width: 100%; height: 40em; border: 1px solid rgba(128, 128, 128, .5)\" srcdoc=\"{WebUtility.HtmlEncode(_html)}\"></iframe>\n";

    /// <summary>Writes the report to a file.</summary>
    /// <param name="path">The file; one that exists is replaced, once the new one is whole.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void Save(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        AtomicFile.Write(path, _html);
    }

    /// <summary>The title.</summary>
    public override string ToString() => Title;
}
