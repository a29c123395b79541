using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Requirements;

namespace ScNet.Results;

/// <summary>A ranked choice as a document for other programs: one row per candidate, the ranked ones first, then the rejected, then those left.</summary>
internal static class ChoiceTable
{
    private static readonly LossKind[] s_kinds = Enum.GetValues<LossKind>();

    private static readonly Figure<Row>[] s_figures =
    [
        new("rank", r => r.Ranked?.Rank),
        new("candidate", r => r.Candidate.Name),
        new("kind", r => NameOf(r.Candidate.Kind)),
        new("status", r => r.Status),
        new("reasons", r => r.Reasons, HasColumn: false),
        new("lifeHours", r => r.Ranked?.LifeHours),
        new("efficiency", r => r.Ranked?.Efficiency),
        new("outputWatts", r => r.Ranked?.OutputWatts),
        new("inputWatts", r => r.Ranked?.InputWatts),
        new("totalLossWatts", r => r.Ranked?.LossWatts),
        .. s_kinds.Select(k => new Figure<Row>($"lossWatts.{KeyOf(k)}", r => r.Ranked?.Loads.Sum(l => l.Load.Share * l.WattsOf(k)))),
        new("areaSquareMetres", r => r.Ranked?.AreaSquareMetres),
        new("parts", r => r.Ranked?.Parts),
        new("rippleVolts", r => r.Ranked?.RippleVolts),
        new("relativeGap", r => r.Ranked?.RelativeGap),
        new("modes", r => r.Ranked?.Modes.Select((m, i) => Members(("mode", m.Name), ("timeShare", r.Ranked.SharesOfModes[i]))), HasColumn: false),
        new("loads", r => r.Ranked?.Loads.Select(Load), HasColumn: false),
        new("elements", r => r.Ranked?.Sized is { } sized ? Elements(sized) : null, HasColumn: false),
    ];

    /// <summary>The columns of the CSV text.</summary>
    public static IReadOnlyList<string> Columns { get; } = [.. s_figures.Where(f => f.HasColumn).Select(f => f.Path)];

    /// <summary>The table.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="sensitivity">What would change the winner; null where it was not asked for.</param>
    public static ResultTable Of(RankedChoice choice, ChoiceSensitivity? sensitivity)
    {
        ArgumentNullException.ThrowIfNull(choice);
        Row[] rows =
        [
            .. choice.Ranked.Select(r => new Row(r.Candidate, r, "ranked", r.Reasons)),
            .. choice.Rejected.Select(r => new Row(r.Candidate, null, "rejected", r.Reasons)),
            .. choice.Left.Select(c => new Row(c, null, "left", [])),
        ];
        return ResultTable.OfAny(
            Conditions(choice, sensitivity), [.. s_figures.Select(f => new Figure<Row>(f.Path, r => Rounded(f.Value(r)), f.HasColumn))], rows);
    }

    // what is found by search is good to some six digits, and more would differ between machines
    private static object? Rounded(object? value) => value switch
    {
        double number => SixDigits.Of(number),
        string => value,
        IEnumerable<KeyValuePair<string, object?>> members => (KeyValuePair<string, object?>[])[.. members.Select(m => new KeyValuePair<string, object?>(m.Key, Rounded(m.Value)))],
        System.Collections.IEnumerable items => items.Cast<object?>().Select(Rounded).ToArray(),
        _ => value,
    };

    private static KeyValuePair<string, object?>[] Conditions(RankedChoice choice, ChoiceSensitivity? sensitivity)
    {
        Requirement requirement = choice.Requirement;
        return
        [
            .. Members(
                ("requirement", requirement.Name),
                ("process", requirement.Process.Name),
                ("isComplete", choice.IsComplete),
                ("inputVolts", Members(("minimum", requirement.InputVolts.Minimum), ("maximum", requirement.InputVolts.Maximum))),
                ("outputVolts", requirement.OutputVolts),
                ("loads", requirement.Loads.Select(l => Members(("load", l.Name), ("amperes", l.Amperes), ("timeShare", l.Share), ("outputVolts", l.OutputVolts)))),
                ("areaSquareMetres", requirement.AreaSquareMetres),
                ("capacitorAreaSquareMetres", requirement.CapacitorAreaSquareMetres),
                ("switchAreaSquareMetres", requirement.SwitchAreaSquareMetres),
                ("frequencyHz", Members(("minimum", requirement.FrequencyHz.Minimum), ("maximum", requirement.FrequencyHz.Maximum)))),
            .. sensitivity is null ? [] : Members(("sensitivity", sensitivity.Changes.Select(c => Members(
                ("assumption", c.Assumption), ("factor", Rounded(c.Factor)), ("winner", c.Winner?.Name))))),
        ];
    }

    private static KeyValuePair<string, object?>[] Load(LoadBudget load) => Members(
        ("load", load.Load.Name),
        ("efficiency", load.Efficiency),
        ("outputWatts", load.OutputWatts),
        ("lossWatts", Members([.. s_kinds.Select(k => (KeyOf(k), (object?)load.WattsOf(k)))])));

    private static IEnumerable<KeyValuePair<string, object?>[]> Elements(SizedConverter sized) =>
    [
        .. sized.Converter.Capacitors.Select((c, i) => sized.Capacitors[i] is var stack ? Members(
            ("element", c.Name), ("device", stack.Device.Name), ("inSeries", stack.Count), ("farads", c.Farads), ("areaSquareMetres", stack.AreaSquareMetres)) : []),
        .. sized.Converter.Switches.Select((s, i) => sized.Switches[i] is var stack ? Members(
            ("element", s.Name), ("device", stack.Device.Name), ("inSeries", stack.Count), ("ohms", s.Ohms), ("widthMicrometres", stack.WidthOfEachMicrometres), ("areaSquareMetres", stack.AreaSquareMetres)) : []),
        .. sized.Converter.Inductors.Select((l, i) => sized.Inductors[i] is var part ? Members(
            ("element", l.Name), ("device", part.Name), ("henries", l.Henries), ("ohms", l.Ohms), ("areaSquareMetres", part.AreaSquareMetres)) : []),
    ];

    private static KeyValuePair<string, object?>[] Members(params (string Key, object? Value)[] members) =>
        [.. members.Select(m => new KeyValuePair<string, object?>(m.Key, m.Value))];

    private static string NameOf(CandidateKind kind) => KeyOf(kind);

    private static string KeyOf<T>(T value)
        where T : struct, Enum => value.ToString() is var name ? char.ToLowerInvariant(name[0]) + name[1..] : string.Empty;

    private sealed record Row(Candidate Candidate, RankedCandidate? Ranked, string Status, IReadOnlyList<string> Reasons);
}
