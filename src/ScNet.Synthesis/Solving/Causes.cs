using Google.OrTools.Sat;

namespace ScNet.Synthesis.Solving;

/// <summary>What makes auxiliary variables true, so that they are false where nothing does.</summary>
/// <param name="model">The model.</param>
internal sealed class Causes(CpModel model)
{
    private readonly Dictionary<int, List<ILiteral>> _causes = [];

    /// <summary>Notes a cause.</summary>
    /// <param name="consequence">What is true where the cause is.</param>
    /// <param name="cause">A cause.</param>
    /// <param name="condition">What all causes need beside; null for nothing.</param>
    public void Add(BoolVar consequence, BoolVar cause, BoolVar? condition = null)
    {
        if (!_causes.TryGetValue(consequence.Index, out List<ILiteral>? causes))
        {
            _causes.Add(consequence.Index, causes = []);
            if (condition is not null)
            {
                model.AddImplication(consequence, condition);
            }
        }

        causes.Add(cause);
    }

    /// <summary>Makes variables false where they have no cause.</summary>
    public void Settle(IEnumerable<BoolVar> variables)
    {
        foreach (BoolVar variable in variables)
        {
            model.AddBoolOr([variable.Not(), .. _causes.GetValueOrDefault(variable.Index) ?? []]);
        }
    }
}
