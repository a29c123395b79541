using ScNet;
using ScNet.Derivations;
using ScNet.Topologies;

Derivation derivation = Derivation.Of(SeriesParallel.StepDown(2))
    .Ratio("1/2")
    .Capacitor("fly1", "1/2", "-1/2")
    .CapacitorVoltage("fly1", "1/2")
    .SlowSwitchingLimit("1/(4*C*f)");
DerivationReport right = derivation.Check(), wrong = derivation.CapacitorVoltage("fly1", "1/3").Check();
Console.WriteLine(right);
Console.WriteLine(wrong);
return right.IsRight && !wrong.IsRight ? 0 : 1;
