using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>What a network with phases of other lengths keeps of a fault.</summary>
public sealed class PeriodSolverDutiesTests
{
    [Fact]
    public void With_other_duties_the_same_load_is_without_supply()
    {
        Circuit circuit = new Circuit(LoadKind.Current, 0.3, 0.7).Capacitor("vin", "vout", 3);
        PeriodSolver solver = PeriodSolver.Of(circuit.Network(), circuit.Values());
        PeriodSolver other = solver.WithDuties(solver.Fine.Duties);
        Assert.Equal((NetworkFault.LoadWithoutSupply, -1, 1), (other.Fault, other.FaultPhase, other.FaultInput));
    }
}
