#!/usr/bin/env dotnet
#:project ../../src/ScNet/ScNet.csproj
// Invented example: the ideal efficiency of each gear of the tag's core, and its output impedance at 10 MHz.
//   dotnet run -c Release docs/examples/efficiency-of-gears.cs
// With the package instead of the sources, the line above reads "#:package ScNet@0.1.0".

using System.Globalization;
using System.Runtime.CompilerServices;
using ScNet;
using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.SteadyState;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
Converter gears = NetlistReader.ReadFile(Path.Combine(Folder(), "core-gears.toml")).GetConverter();
foreach (ModeAnalysis mode in ConverterAnalysis.Of(gears).Results)
{
    double ratio = mode.Ratio.ToDouble();
    double ohms = OutputImpedance.Of(mode).At(10e6).Ohms;
    Console.WriteLine($"{mode.Mode.Name}: {3.6 * ratio:F2} V from 3.6 V, {0.7 / (3.6 * ratio):P0} at 0.7 V, {ohms:F1} Ω at 10 MHz");
}

// The folder of this file, wherever it is run from.
static string Folder([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
