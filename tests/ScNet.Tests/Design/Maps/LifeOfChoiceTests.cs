using ScNet.Design.Choice;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.Tests.Design.Choice;

namespace ScNet.Tests.Design.Maps;

/// <summary>The life of a ranked candidate against the plain sum over small parts of the discharge, written out here.</summary>
public sealed class LifeOfChoiceTests
{
    private const int Parts = 400;

    [Fact]
    public void The_life_of_ranked_candidates_is_charge_over_current_in_small_parts()
    {
        Requirement requirement = CoreRequirement.Of(candidates: [new() { Families = ["linear"] }, new() { Families = ["series-parallel"], Sizes = new(2, 3) }]);
        RankedChoice choice = RankedChoice.Of(requirement, Candidates.Of(requirement).All);
        Assert.True(choice.Ranked.Count == 3, string.Join("; ", choice.Rejected));
        foreach (RankedCandidate ranked in choice.Ranked)
        {
            double seconds = 0, output = 0, input = 0;
            for (int k = 0; k < Parts; k++)
            {
                double open = OpenVolts(requirement, 1 - ((k + 0.5) / Parts)), amperes = 0, watts = 0, taken = 0;
                foreach (LoadShare load in requirement.Loads)
                {
                    (double Volts, RegulatedPoint Point) best = ranked.Modes.Select(m => Behind(requirement, m, open, load)).Where(m => m.Point.IsHeld).MinBy(m => m.Point.InputWatts / m.Volts);
                    amperes += load.Share * best.Point.InputWatts / best.Volts;
                    watts += load.Share * load.OutputVolts!.Value * load.Amperes;
                    taken += load.Share * best.Point.InputWatts;
                }

                double own = requirement.CellCoulombs!.Value / Parts / amperes;
                seconds += own;
                output += own * watts;
                input += own * taken;
            }

            Assert.Equal(1, ranked.LifeHours!.Value * 3600 / seconds, 2e-3);
            Assert.Equal(output / input, ranked.Efficiency, 2e-3);
        }
    }

    private static double OpenVolts(Requirement requirement, double charge)
    {
        int k = 1;
        while (requirement.Discharge[k].StateOfCharge > charge)
        {
            k++;
        }

        (DischargePoint from, DischargePoint to) = (requirement.Discharge[k - 1], requirement.Discharge[k]);
        return to.Volts + ((from.Volts - to.Volts) * (charge - to.StateOfCharge) / (from.StateOfCharge - to.StateOfCharge));
    }

    // V = V_oc - R P/V, a hundred times over
    private static (double Volts, RegulatedPoint Point) Behind(Requirement requirement, RegulatedMode mode, double open, LoadShare load)
    {
        double volts = open;
        RegulatedPoint point = mode.Hold(volts, load.OutputVolts!.Value, load.Amperes);
        for (int turn = 0; turn < 100 && point.IsHeld; turn++)
        {
            volts = open - (requirement.SourceOhms * point.InputWatts / volts);
            point = mode.Hold(volts, load.OutputVolts.Value, load.Amperes);
        }

        return (volts, point);
    }
}
