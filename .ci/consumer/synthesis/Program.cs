using Fractions;
using ScNet.Synthesis;

SynthesisResult smallest = SmallestConverter.Find(new SynthesisRequest(
    [new WantedRatio(new Fraction(1, 2), 4.2), new WantedRatio(new Fraction(1, 3), 4.2)], 2));
Console.WriteLine(smallest);
return smallest is { Outcome: SynthesisOutcome.Proved, Cost: 7 } ? 0 : 1;
