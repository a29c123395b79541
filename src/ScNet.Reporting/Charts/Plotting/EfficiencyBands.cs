using System.Globalization;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Efficiencies in equal steps, each with its fill.</summary>
internal sealed class EfficiencyBands
{
    // in per cent
    private static readonly int[] s_steps = [1, 2, 5, 10, 20];

    private readonly int _low, _step;

    private EfficiencyBands(int low, int step, IReadOnlyList<Ink> inks) => (_low, _step, Inks) = (low, step, inks);

    /// <summary>The fills, from the lowest efficiency to the highest.</summary>
    public IReadOnlyList<Ink> Inks { get; }

    /// <summary>The finest steps with which so many bands hold all values.</summary>
    public static EfficiencyBands Of(IEnumerable<double?> efficiencies, int most)
    {
        double[] percent = [.. efficiencies.OfType<double>().Select(e => 100 * e)];
        (double least, double largest) = percent.Length > 0 ? (percent.Min(), percent.Max()) : (0, 0);
        int step = s_steps.First(s => Count(s) <= most);
        int count = Count(step);
        return new EfficiencyBands(
            (int)Math.Floor(least / step) * step,
            step,
            [.. Enumerable.Range(0, count).Select(k => new Ink($"band-{k}", Palette.Ramp[count == 1 ? 0 : k * (Palette.Ramp.Count - 1) / (count - 1)]) { IsSeamless = true })]);

        int Count(int s) => (int)Math.Floor(largest / s) - (int)Math.Floor(least / s) + 1;
    }

    public Ink InkOf(double efficiency) => Inks[Math.Clamp(((int)Math.Floor(100 * efficiency) - _low) / _step, 0, Inks.Count - 1)];

    /// <summary>"75 to 80 %".</summary>
    public string TextOf(int band) => string.Create(CultureInfo.InvariantCulture, $"{_low + (band * _step)} to {_low + ((band + 1) * _step)} %");
}
