using System.Reflection;
using System.Runtime.ExceptionServices;
using ScNet.Tests.Kernel;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace ScNet.Mutants;

/// <summary>One test: a fact, or a theory with all its rows.</summary>
internal sealed class RoomTest(MethodInfo method)
{
    public string Name => $"{method.DeclaringType!.FullName}.{method.Name}";

    /// <summary>The tests of a room in the order of their names, without those marked long.</summary>
    public static RoomTest[] Of(RoomTests room) => [.. typeof(RationalTests).Assembly.GetTypes()
        .Where(t => t is { IsAbstract: false, ContainsGenericParameters: false })
        .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Instance))
        .Where(m => m.GetCustomAttribute<FactAttribute>() is { Skip: null } && !IsLong(m) && !IsLong(m.ReflectedType!))
        .Select(m => new RoomTest(m))
        .Where(t => room.Has(t.Name))
        .OrderBy(t => t.Name, StringComparer.Ordinal)];

    /// <summary>Runs it; throws what it throws where it fails.</summary>
    public void Run()
    {
        foreach (object?[] row in Rows())
        {
            object instance = Activator.CreateInstance(method.ReflectedType!, [.. method.ReflectedType!.GetConstructors()[0].GetParameters().Select(_ => (object)new NoOutput())])!;
            try
            {
                if (method.Invoke(instance, method.ResolveMethodArguments(row)) is Task task)
                {
                    task.GetAwaiter().GetResult();
                }
            }
            catch (TargetInvocationException exception)
            {
                ExceptionDispatchInfo.Throw(exception.InnerException!);
            }
            finally
            {
                (instance as IDisposable)?.Dispose();
            }
        }
    }

    private static bool IsLong(MemberInfo member) => member.GetCustomAttributesData().Any(a => a.AttributeType == typeof(TraitAttribute) && a.ConstructorArguments is [{ Value: "Length" }, { Value: "Long" }]);

    private IEnumerable<object?[]> Rows() => method.GetCustomAttribute<TheoryAttribute>() is null ? [[]] : method.GetCustomAttributes<DataAttribute>().SelectMany(d => d.GetData(method));

    private sealed class NoOutput : ITestOutputHelper
    {
        public void WriteLine(string message)
        {
        }

        public void WriteLine(string format, params object[] args)
        {
        }
    }
}
