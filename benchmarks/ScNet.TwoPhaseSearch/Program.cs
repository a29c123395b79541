using System.Globalization;
using Fractions;
using ScNet.TwoPhaseSearch;

// Searches every two-phase network of up to three flying capacitors; takes a few seconds. Without an argument
// it prints the ratios that each number of capacitors gives, then the table of
// src/ScNet/Topologies/FractionalNetworks.cs; with ratios ("2/3 -1/2") it prints those rows only.
const int MaximumCapacitors = 3;
Fraction[] wanted = [.. args.Select(a => Fraction.FromString(a, CultureInfo.InvariantCulture))];
if (wanted.Length == 0)
{
    for (int capacitors = 1; capacitors <= MaximumCapacitors; capacitors++)
    {
        SortedSet<Fraction> ratios = new TwoPhaseNetworks(capacitors).Ratios();
        Console.WriteLine($"// {capacitors} flying: {ratios.Count} ratios: {string.Join(", ", ratios)}");
    }
}

// The others are these run backwards.
foreach ((Fraction ratio, Candidate network) in BestNetworks.Find(
    MaximumCapacitors, r => wanted.Length == 0 ? r.Abs() <= 1 : wanted.Contains(r)))
{
    Console.WriteLine($"[({ratio.Numerator}, {ratio.Denominator})] = \"{network}\", // {network.SwitchProduct}, {network.CapacitorProduct}");
}
