using System.Collections.Concurrent;
using System.Diagnostics;
using System.Reflection;

namespace ScNet.Testing;

/// <summary>Which tests hold laws: a campaign runs those alone that are marked, so that a law in any other test is an error.</summary>
internal static class LawTests
{
    /// <summary>The trait of tests that hold laws, on the class or on the test.</summary>
    public const string Trait = "Kind";

    /// <summary>Its value.</summary>
    public const string Law = "Law";

    /// <summary>Its value for tests of <see cref="LawCheck"/> itself, which break laws on purpose and stay out of campaigns.</summary>
    public const string OfCheck = "LawCheck";

    private static readonly ConcurrentDictionary<MethodBase, bool> s_isMarked = new();

    /// <summary>Requires that the test on the stack is marked.</summary>
    /// <exception cref="InvalidOperationException">It is not, or there is none.</exception>
    public static void RequireMark()
    {
        MethodBase? test = new StackTrace().GetFrames().Select(f => f.GetMethod()).FirstOrDefault(m => m is not null && Has(m, "Xunit.FactAttribute"));
        if (test is null || !s_isMarked.GetOrAdd(test, t => IsMarked(t)))
        {
            throw new InvalidOperationException(
                $"{(test is null ? "No test" : $"{test.DeclaringType!.Name}.{test.Name}")} holds a law: a campaign finds tests by [Trait(\"{Trait}\", \"{Law}\")] on the class or the test.");
        }
    }

    /// <summary>Whether a test or its class is marked.</summary>
    public static bool IsMarked(MethodBase test) => new MemberInfo[] { test, test.DeclaringType! }.Any(
        m => m.CustomAttributes.Any(a => a.AttributeType.FullName == "Xunit.TraitAttribute" && a.ConstructorArguments is [{ Value: Trait }, { Value: Law or OfCheck }]));

    // xunit itself is known to test projects only
    private static bool Has(MethodBase method, string attribute)
    {
        foreach (CustomAttributeData own in method.CustomAttributes)
        {
            for (Type? type = own.AttributeType; type is not null; type = type.BaseType)
            {
                if (type.FullName == attribute)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
