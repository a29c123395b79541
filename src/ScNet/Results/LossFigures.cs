using ScNet.Design.Losses;

namespace ScNet.Results;

/// <summary>The figures of a loss budget in documents for other programs.</summary>
internal static class LossFigures
{
    private static readonly LossKind[] s_kinds = [.. Enum.GetValues<LossKind>().Where(k => k != LossKind.LinearDrop)];

    /// <summary>Efficiency, powers and losses by kind, then, without a column, by element, with the notes and the devices.</summary>
    /// <param name="path">What their paths begin with, such as "budget.".</param>
    /// <param name="budget">The budget of a row; null where it has none.</param>
    public static Figure<T>[] Of<T>(string path, Func<T, LossBudget?> budget) =>
    [
        new($"{path}outputVoltageVolts", r => budget(r)?.OutputVolts),
        new($"{path}inputPowerWatts", r => budget(r)?.InputWatts),
        new($"{path}outputPowerWatts", r => budget(r)?.OutputWatts),
        new($"{path}totalLossWatts", r => budget(r)?.TotalLossWatts),
        new($"{path}efficiency", r => budget(r)?.Efficiency) { SortValue = r => -budget(r)?.Efficiency },
        .. s_kinds.Select(k => new Figure<T>($"{path}losses.{JsonName(k)}Watts", r => budget(r)?.WattsOf(k))),
        new($"{path}lossesOfElements", r => budget(r) is { } own ? ByElement(own) : null, HasColumn: false),
        new($"{path}notes", r => budget(r)?.Notes.Select(n => n.ToString()).ToArray(), HasColumn: false),
        new($"{path}devices", r => budget(r) is { } own ? Devices(own.Sized) : null, HasColumn: false),
    ];

    private static string JsonName(LossKind kind) => char.ToLowerInvariant(kind.ToString()[0]) + kind.ToString()[1..];

    private static KeyValuePair<string, object?>[] ByElement(LossBudget budget) =>
    [
        .. budget.Losses.GroupBy(l => l.Kind).Select(kind => new KeyValuePair<string, object?>(
            JsonName(kind.Key), kind.Where(l => l.Element.Length > 0).Select(l => new KeyValuePair<string, object?>(l.Element, l.Watts)).ToArray())),
    ];

    private static KeyValuePair<string, object?>[] Devices(SizedConverter sized) =>
    [
        .. sized.Converter.Switches.Zip(sized.Switches, (s, stack) => Device(s.Name, stack.Device.Name, stack.Count, stack.AreaSquareMetres)),
        .. sized.Converter.Capacitors.Zip(sized.Capacitors, (c, stack) => Device(c.Name, stack.Device.Name, stack.Count, stack.AreaSquareMetres)),
    ];

    private static KeyValuePair<string, object?> Device(string element, string device, int count, double area) => new(element, new KeyValuePair<string, object?>[]
    {
        new("device", device), new("count", count), new("areaSquareMetres", area),
    });
}
