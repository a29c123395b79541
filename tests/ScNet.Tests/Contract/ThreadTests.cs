using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Design.Maps;
using ScNet.Devices;
using ScNet.Netlists;
using ScNet.Reconfiguration;
using ScNet.Results;
using ScNet.Results.Pages;
using ScNet.SteadyState;
using ScNet.Stress;
using ScNet.Tests.Design.Choice;
using ScNet.Tests.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Contract;

/// <summary>Many threads on one object, whose parts are made at first use, find what one thread finds.</summary>
public sealed class ThreadTests
{
    private static readonly OperatingPoint s_point = new(3.6, 0.002, 2e7);

    public static TheoryData<string, Func<Func<string>>> Works => new()
    {
        { "converter", () => On(Converter(), c => NetlistWriter.ToToml(c) + string.Join(',', c.Modes.Select(m => c.Modes[m.Name].Index)) + c.WithDuties([.. c.Phases.Select(p => p.Duty)])) },
        { "analysis", () => On(Fresh(), a => AnalysisDocument.ToJson(a) + string.Concat(a.Modes.Select(m => AnalysisPage.Of(a.Converter, [m], [1e6, 1e8]).ToText()))) },
        { "mode", () => On(Fresh().Modes[0].Require(), m => string.Concat(new[] { 1e5, 1e7, 1e9 }.Select(f => OutputImpedance.Of(m).At(f).Ohms.ToString("R", System.Globalization.CultureInfo.InvariantCulture))) + ResultPage.Of(PeriodicSteadyState.Of(m, s_point))!.ToText() + ImpedanceSensitivity.Of(m, 1e6)) },
        { "impedance", () => On(OutputImpedance.Of(Fresh().Modes[1].Require()), z => string.Concat(Enumerable.Range(1, 20).Select(i => z.At(i * 1e6).Ohms.ToString("R", System.Globalization.CultureInfo.InvariantCulture)))) },
        { "steady-state model", () => On(SteadyStateModel.Of(Fresh().Modes[1].Require()), m => ResultPage.Of(m.At(s_point))!.ToText()) },
        { "value-decided flow", () => On(ModeAnalysis.Of(RatedNetworks.Half().Capacitor("more", "p", "n").Build()), m => ResultPage.Of(m)!.ToText() + OutputImpedance.Of(m).At(1e6).Ohms.ToString("R", System.Globalization.CultureInfo.InvariantCulture)) },
        { "hybrid", () => On(ModeAnalysis.Of(RatedNetworks.Example("four-level-stage")), m => ResultPage.Of(m)!.ToText() + ResultPage.Of(PeriodicSteadyState.Of(m, s_point))!.ToText()) },
        { "stress", () => On(ConverterStress.Of(Fresh(), new Interval<double>(2.8, 4.2)), s => ResultPage.Of(s)!.ToText() + ResultPage.Of(ConverterRatings.Of(s, RatingLimits.OfRating(1.8)))!.ToText()) },
        { "tolerances", () => On(Fresh().Modes[0].Require(), m => ResultPage.Of(ImpedanceTolerance.MonteCarlo(m, 1e6, new ComponentTolerances(0.1, 0.1), 20, seed: 3))!.ToText()) },
        { "reach", () => On(RatedNetworks.Half().Build(), c => string.Join(',', ReachableRatios.Of(c))) },
        { "choice", () => On(RankedChoice.Of(CoreRequirement.Of(), [Candidate.Linear, Candidate.Of(SeriesParallel.StepDown(3))]), c => ChoicePage.Of(c).ToText() + ResultTable.OfMap(OperatingMap.Of(c.Winner!.Modes, [2.8, 4.2], [0.5, 0.8], [1e-5, 1e-2])).ToCsv()) },
    };

    [Theory]
    [MemberData(nameof(Works))]
    public void What_many_threads_find_is_what_one_finds(string what, Func<Func<string>> make)
    {
        Assert.NotEmpty(what);
        ManyThreads.AgreeWithOne(make);
    }

    [Fact]
    public void A_shared_object_that_is_not_safe_is_seen() => Assert.ThrowsAny<Exception>(() => ManyThreads.AgreeWithOne(() => On(new int[1], cell =>
    {
        cell[0]++;
        return cell[0].ToString(System.Globalization.CultureInfo.InvariantCulture);
    })));

    private static Func<string> On<T>(T shared, Func<T, string> ask) => () => ask(shared);

    private static Converter Converter() => RatedNetworks.Example("memory-gears");

    private static ConverterAnalysis Fresh() => ConverterAnalysis.Of(Converter());
}
