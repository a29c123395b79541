using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Design.Sizing;

/// <summary>
/// What the elements of a mode cost beside their resistance, for each kind and stack that they may have: by the loss model
/// itself, which is a straight line in every capacitance and conductance.
/// </summary>
internal sealed class ModeCosts
{
    private const double LowFarads = 1e-9, HighFarads = 2e-9, LowSiemens = 1, HighSiemens = 2;

    private readonly Cost[][] _costs;
    private readonly LossPolynomial _fixed;

    private ModeCosts(Cost[][] costs, LossPolynomial rest)
    {
        _costs = costs;
        _fixed = rest;
    }

    /// <summary>Asks the loss model.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="process">What drives and runs it.</param>
    /// <param name="options">What each element may be made of.</param>
    public static ModeCosts Of(ModeAnalysis analysis, Process process, ElementOptions options)
    {
        Converter converter = analysis.Converter;
        int capacitors = converter.Capacitors.Count, count = capacitors + converter.Switches.Count;
        int[] optionCounts = [.. options.Capacitors.Select(o => o.Length), .. options.Switches.Select(o => o.Length)];
        Cost[][] costs = [.. optionCounts.Select(n => new Cost[n])];
        Dictionary<string, int> places = converter.Capacitors.Select(c => c.Name).Concat(converter.Switches.Select(s => s.Name))
            .Select((name, e) => (name, e)).ToDictionary(p => p.name, p => p.e, StringComparer.Ordinal);
        LossPolynomial rest = default;
        for (int o = 0; o < optionCounts.Max(); o++)
        {
            LossPolynomial[] low = Terms(o, LowFarads, LowSiemens, out rest), high = Terms(o, HighFarads, HighSiemens, out _);
            for (int e = 0; e < count; e++)
            {
                if (o < optionCounts[e])
                {
                    (double from, double to) = e < capacitors ? (LowFarads, HighFarads) : (LowSiemens, HighSiemens);
                    costs[e][o] = new Cost(low[e], high[e], from, to);
                }
            }
        }

        return new ModeCosts(costs, rest);

        LossPolynomial[] Terms(int option, double farads, double siemens, out LossPolynomial others)
        {
            SizedConverter sized = SizedValues.Build(
                converter, process, [.. options.Capacitors.Select(c => c[Math.Min(option, c.Length - 1)])], [.. options.Switches.Select(s => s[Math.Min(option, s.Length - 1)])],
                [.. Enumerable.Repeat(farads, capacitors)], [.. Enumerable.Repeat(1 / siemens, count - capacitors)], []);
            var terms = new LossPolynomial[count];
            others = default;
            foreach (LossTerm term in LossTerms.Of(sized, analysis.WithValuesOf(sized.Converter)).Terms)
            {
                if (term.Kind is LossKind.Conduction or LossKind.Windings)
                {
                    continue;
                }

                if (places.TryGetValue(term.Element, out int element))
                {
                    terms[element] += term.Watts;
                }
                else
                {
                    others += term.Watts;
                }
            }

            return terms;
        }
    }

    /// <summary>What an element costs at an input voltage: watts per hertz and watts, each a constant and a slope over its value.</summary>
    public ElementCost At(int element, int option, double inputVolts) => _costs[element][option].At(inputVolts);

    /// <summary>What belongs to no element.</summary>
    public (double WattsPerHertz, double Watts) FixedAt(double inputVolts) => (PerHertz(_fixed, inputVolts), Always(_fixed, inputVolts));

    private static double PerHertz(LossPolynomial p, double volts) => p.Hertz + (volts * (p.HertzVolts + (volts * p.HertzVolts2)));

    private static double Always(LossPolynomial p, double volts) => p.Constant + (volts * (p.Volts + (volts * p.Volts2)));

    private readonly record struct Cost(LossPolynomial Low, LossPolynomial High, double From, double To)
    {
        public ElementCost At(double volts)
        {
            (double perHertz, double perHertzFixed) = Line(PerHertz(Low, volts), PerHertz(High, volts));
            (double watts, double wattsFixed) = Line(Always(Low, volts), Always(High, volts));
            return new ElementCost(perHertz, perHertzFixed, watts, wattsFixed);
        }

        // what is left of a constant that is none is rounding
        private (double Slope, double Constant) Line(double low, double high)
        {
            double slope = (high - low) / (To - From), constant = low - (slope * From);
            return (Math.Max(slope, 0), constant > 1e-9 * low ? constant : 0);
        }
    }
}
