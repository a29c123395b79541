namespace ScNet.Design.Sizing;

/// <summary>What an element of value v costs: f · (PerHertz · v + PerHertzFixed) + Watts · v + WattsFixed.</summary>
internal readonly record struct ElementCost(double PerHertz, double PerHertzFixed, double Watts, double WattsFixed);
