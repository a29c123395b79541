using System.Globalization;
using ScNet.Design.Choice;
using ScNet.Design.Requirements;

namespace ScNet.Results.Pages;

/// <summary>A ranked choice as a page: the order, why, what was rejected, and the winner in detail.</summary>
public static class ChoicePage
{
    private const string Whole = "of the energy over discharge and time";

    /// <summary>The columns of the order that every requirement has; the efficiency in each state of its load stands before the area.</summary>
    public static IReadOnlyList<PageColumn> Columns { get; } =
    [
        new("rank", true, "rank"), new("candidate", false, "candidate"), new("kind", false, "kind"), new("life", true, "lifeHours", Group: "whole"),
        new("efficiency", true, "efficiency", Whole, "whole"), new("loss", true, "totalLossWatts", Whole, "whole"), new("area", true, "areaSquareMetres"),
    ];

    /// <summary>The page.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="sensitivity">What would change the winner; null where that is not asked for.</param>
    /// <param name="order">The positions of the ranked candidates in the order of the rows; null for the order of their ranks.</param>
    public static Page Of(RankedChoice choice, ChoiceSensitivity? sensitivity = null, IReadOnlyList<int>? order = null)
    {
        ArgumentNullException.ThrowIfNull(choice);
        Requirement requirement = choice.Requirement;
        List<PageBlock> blocks =
        [
            new PageRemarks([
                $"{Range(requirement.InputVolts, "V")} in, {string.Join(", ", requirement.OutputVolts.Select(v => EngineeringNumber.Of(v, "V")))} out; {string.Join(", ", requirement.Loads.Select(Load))}",
                $"process {requirement.Process.Name}; {Areas(requirement)}; {Range(requirement.FrequencyHz, "Hz")}",
            ]),
            Order(choice, order),
            .. Reasons("Why", choice.Ranked.Select(r => ($"{r.Rank}. {r.Candidate.Name}", r.Reasons))),
            .. Reasons("Rejected", choice.Rejected.Select(r => (r.Candidate.Name, r.Reasons))),
        ];
        if (!choice.IsComplete)
        {
            blocks.Add(new PageHeading("Stopped before these were worked out"));
            blocks.Add(new PageRemarks([string.Join("; ", choice.Left)], isCaution: true));
        }

        if (choice.Winner is { } winner)
        {
            blocks.AddRange(ChosenBlocks.Of(winner));
        }

        if (sensitivity is not null)
        {
            blocks.Add(new PageHeading("What would change the winner"));
            blocks.Add(Sensitivity(sensitivity));
        }

        return new Page(requirement.Name, blocks, choice is { IsComplete: true, Winner: not null });
    }

    private static PageBlock Order(RankedChoice choice, IReadOnlyList<int>? order)
    {
        if (choice.Ranked.Count == 0)
        {
            return new PageRemarks(["No candidate does what is required."], isCaution: true);
        }

        bool hasLife = choice.Ranked[0].LifeHours is not null;
        return new PageTable(
            string.Empty,
            [
                .. Columns.SkipLast(1).Where(c => hasLife || c.Heading != "life"),
                .. choice.Requirement.Loads.Select(l => new PageColumn(l.Name, true, Meaning: "efficiency in this state of the load", Group: "states")),
                Columns[^1],
            ],
            (order ?? [.. Enumerable.Range(0, choice.Ranked.Count)]).Select(i => choice.Ranked[i]).Select(r => (IEnumerable<PageCell>)
            [
                Cells.Count(r.Rank), r.Candidate.Name, KindOf(r.Candidate.Kind),
                .. r.LifeHours is { } hours ? [new PageCell(string.Create(CultureInfo.InvariantCulture, $"{hours:F1} h"), hours)] : Array.Empty<PageCell>(),
                Cells.Percent(r.Efficiency), Cells.Of(r.LossWatts, "W"),
                .. r.Loads.Select(l => Cells.Percent(l.Efficiency)),
                AreaText.Of(r.AreaSquareMetres),
            ]),
            nameColumns: 2,
            hasLegend: true);
    }

    private static IEnumerable<PageBlock> Reasons(string title, IEnumerable<(string Name, IReadOnlyList<string> Reasons)> candidates)
    {
        bool isFirst = true;
        foreach ((string name, IReadOnlyList<string> reasons) in candidates)
        {
            if (isFirst)
            {
                isFirst = false;
                yield return new PageHeading(title);
            }

            yield return new PageHeading(name, level: 2);
            yield return new PageRemarks(reasons);
        }
    }

    private static PageTable Sensitivity(ChoiceSensitivity sensitivity) => new(
        string.Create(
            CultureInfo.InvariantCulture, $"Each assumption by itself, by factors from 1/{ChoiceSensitivity.LargestFactor:G3} to {ChoiceSensitivity.LargestFactor:G3}{(sensitivity.IsComplete ? string.Empty : "; stopped before all were tried")}"),
        [new("assumption", false, "sensitivity.assumption"), new("factor", true, "sensitivity.factor"), new("winner then", false, "sensitivity.winner")],
        sensitivity.Changes.Select(change => (IEnumerable<PageCell>)
        [
            change.Assumption,
            change.Factor is { } factor ? new PageCell(string.Create(CultureInfo.InvariantCulture, $"× {factor:G2}"), factor) : "-",
            change.Factor is null ? "the same" : change.Winner?.Name ?? "no candidate does what is required",
        ]));

    private static string Areas(Requirement requirement) => string.Join(", ", new[]
    {
        requirement.AreaSquareMetres is { } all ? $"{AreaText.Of(all).Text} in all" : null,
        requirement.CapacitorAreaSquareMetres is { } capacitors ? $"{AreaText.Of(capacitors).Text} of capacitors" : null,
        requirement.SwitchAreaSquareMetres is { } switches ? $"{AreaText.Of(switches).Text} of switches" : null,
    }.OfType<string>());

    private static string Load(LoadShare load) =>
        $"{load.Name} {EngineeringNumber.Of(load.Amperes, "A")}{(load.OutputVolts is { } volts ? $" at {EngineeringNumber.Of(volts, "V")}" : string.Empty)} for {Cells.Percent(load.Share).Text}";

    private static string Range(Interval<double> range, string unit) => range.IsPoint
        ? EngineeringNumber.Of(range.Minimum, unit)
        : $"{EngineeringNumber.Of(range.Minimum, unit)} to {EngineeringNumber.Of(range.Maximum, unit)}";

    private static string KindOf(CandidateKind kind) => kind switch
    {
        CandidateKind.SwitchedCapacitor => "capacitors",
        CandidateKind.Inductive => "inductor",
        CandidateKind.Hybrid => "hybrid",
        _ => "linear",
    };
}
