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
    private static readonly ConcurrentDictionary<(string File, string Name), bool> s_isMarkedAt = new();

    /// <summary>
    /// Requires that the test on the stack is marked; where the compiler has put the check in the place of a test whose last
    /// act it is, so that the stack has no test any more, the one that the check was called from.
    /// </summary>
    /// <param name="file">Where the law stands.</param>
    /// <param name="name">What the law is called.</param>
    /// <exception cref="InvalidOperationException">It is not, or there is none.</exception>
    public static void RequireMark(string file, string name)
    {
        // what the runtime makes itself to call methods has no type and no attributes
        MethodBase? test = new StackTrace().GetFrames().Select(f => f.GetMethod()).FirstOrDefault(m => m?.DeclaringType is not null && IsTest(m));
        if (!(test is null ? s_isMarkedAt.GetOrAdd((file, name), at => IsMarked(at.File, at.Name)) : s_isMarked.GetOrAdd(test, IsMarked)))
        {
            throw new InvalidOperationException(
                $"{(test is null ? $"{Path.GetFileNameWithoutExtension(file)}.{name}" : $"{test.DeclaringType!.Name}.{test.Name}")} holds a law: a campaign finds tests by [Trait(\"{Trait}\", \"{Law}\")] on the class or the test.");
        }
    }

    /// <summary>Whether a test is marked that stands in a class named after its file; of a method that tests share, whether any of them is.</summary>
    public static bool IsMarked(string file, string name)
    {
        const BindingFlags own = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        MethodInfo[] tests = [.. AppDomain.CurrentDomain.GetAssemblies()
            .Where(a => a.GetName().Name?.EndsWith(".Tests", StringComparison.Ordinal) == true)
            .SelectMany(a => a.GetTypes()).Where(t => t.Name == Path.GetFileNameWithoutExtension(file))
            .SelectMany(t => t.GetMethods(own)).Where(IsTest)];
        MethodInfo[] named = [.. tests.Where(t => t.Name == name)];
        return named.Length > 0 ? named.All(IsMarked) : tests.Any(IsMarked);
    }

    /// <summary>Whether a test or its class is marked.</summary>
    public static bool IsMarked(MethodBase test) => new MemberInfo[] { test, test.DeclaringType! }.Any(
        m => m.CustomAttributes.Any(a => a.AttributeType.FullName == "Xunit.TraitAttribute" && a.ConstructorArguments is [{ Value: Trait }, { Value: Law or OfCheck }]));

    // xunit itself is known to test projects only
    private static bool IsTest(MethodBase method)
    {
        foreach (CustomAttributeData own in method.CustomAttributes)
        {
            for (Type? type = own.AttributeType; type is not null; type = type.BaseType)
            {
                if (type.FullName == "Xunit.FactAttribute")
                {
                    return true;
                }
            }
        }

        return false;
    }
}
