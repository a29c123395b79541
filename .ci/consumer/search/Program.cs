using Fractions;
using ScNet;
using ScNet.Analysis;
using ScNet.Search;

AtlasAnswer third = AtlasAnswer.Of(new AtlasQuery(new Fraction(1, 3)) { CapacitorCount = 2 });
AtlasAnswer fifth = AtlasAnswer.Of(new AtlasQuery(new Fraction(1, 5)) { CapacitorCount = 2 });
Converter best = third.Networks[0].ToConverter();
Console.WriteLine($"{third} The first: {third.Networks[0]}");
Console.WriteLine(fifth);
return ModeAnalysis.Of(best).Ratio == Quantity.Exact(1, 3) && fifth.Networks.Count == 0 ? 0 : 1;
