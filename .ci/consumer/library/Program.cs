using ScNet;
using ScNet.Analysis;

Converter half = Converter.Create("Half")
    .Input("vin").Output("vout")
    .Capacitor("fly", "p", "n")
    .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
    .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
    .Build();

string ratio = $"{ModeAnalysis.Of(half).Ratio}";
Console.WriteLine($"{half} has the ratio {ratio}");
return ratio == "1/2" ? 0 : 1;
