using Fractions;
using ScNet;
using ScNet.Analysis;
using ScNet.Derivations;
using ScNet.Netlists;
using ScNet.Search;
using ScNet.SteadyState;
using ScNet.Topologies;

Converter family = Ladder.StepDown(3);
Converter ladder = NetlistReader.Read(NetlistWriter.ToToml(family.WithValues(
    farads: [.. family.Capacitors.Select(_ => 1e-9)], ohms: [.. family.Switches.Select(_ => 1.0)]))).GetConverter();
ModeAnalysis analysis = ModeAnalysis.Of(ladder);
bool isRight = Derivation.Of(ladder).Ratio("1/3").Check().IsRight;
int networks = AtlasAnswer.Of(new AtlasQuery(new Fraction(1, 3)) { CapacitorCount = 2 }).Networks.Count;
double ohms = OutputImpedance.Of(analysis).At(1e6).Ohms;
Console.WriteLine($"{ladder}: {analysis.Ratio}, {isRight}, {networks} networks, {ohms > 0}");
return analysis.Ratio == Quantity.Exact(1, 3) && isRight && networks > 0 && ohms > 0 ? 0 : 1;
