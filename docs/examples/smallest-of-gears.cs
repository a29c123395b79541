#!/usr/bin/env dotnet
#:project ../../src/ScNet.Synthesis/ScNet.Synthesis.csproj
// Invented example: the fewest switches that make the gears of the tag's memory from two capacitors, and the netlist.
//   dotnet run -c Release docs/examples/smallest-of-gears.cs
// With the package instead of the sources, the line above reads "#:package ScNet.Synthesis@0.1.0".

using System.Globalization;
using System.Runtime.CompilerServices;
using ScNet;
using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.Synthesis;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
Converter gears = NetlistReader.ReadFile(Path.Combine(Folder(), "memory-gears.toml")).GetConverter();
WantedRatio[] ratios = [.. ConverterAnalysis.Of(gears).Results.Select(mode => new WantedRatio(mode.Ratio.ToFraction(), 4.2))];
SynthesisResult smallest = SmallestConverter.Find(new SynthesisRequest(ratios, gears.Capacitors.Count), "Smallest memory gears");
Console.WriteLine($"{gears.Name}: {gears.Switches.Count} switches drawn by hand");
Console.WriteLine(smallest);

// devices of 1.5 V, stacked where a switch blocks more, in every gear and at every change of gear
SynthesisResult rated = SmallestConverter.Find(new SynthesisRequest(ratios, gears.Capacitors.Count)
{
    Cost = SynthesisCost.Devices,
    SwitchRatingVolts = 1.5,
    LargestStack = 3,
    HoldsAtChanges = true,
});
Console.WriteLine($"with devices of 1.5 V, at changes of gear too: {rated}");
Console.WriteLine();
Console.Write(NetlistWriter.ToToml(smallest.Converter!));

// The folder of this file, wherever it is run from.
static string Folder([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
