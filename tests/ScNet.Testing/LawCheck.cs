using System.Globalization;
using System.Runtime.CompilerServices;
using CsCheck;
using ScNet.Netlists;

namespace ScNet.Testing;

/// <summary>
/// Holds a law against random cases that are the same on every run: the cases of a law depend on its file and
/// name and on one number, which is fixed unless a campaign sets another.
/// </summary>
/// <remarks>
/// The environment sets a campaign (see `.ci/campaign`): SCNET_LAWS_SEED another number, SCNET_LAWS_TIMES how many
/// times as many cases, SCNET_LAWS_CASE one case alone, as a failure names it, SCNET_LAWS_REPORT a folder for what was
/// held (<see cref="LawReport"/>). Cases run one after another, so that the first failure is the same one every time; it is
/// then made smaller by a fixed number of draws, SCNET_LAWS_SHRINKING another number. A test that holds a law is marked as one (<see cref="LawTests"/>).
/// </remarks>
internal static class LawCheck
{
    private const ulong UsualSeed = 20_260_101;
    private const ulong ShrinkingDraws = 2_000;

    [ThreadStatic]
    private static (string Law, string Case) s_current;

    /// <summary>The law that is being held on this thread and the case it is held against; empty where none is.</summary>
    public static (string Law, string Case) Current => (s_current.Law ?? "", s_current.Case ?? "");

    /// <summary>Holds the law against so many cases.</summary>
    /// <param name="cases">Draws the cases.</param>
    /// <param name="law">Throws where the law does not hold.</param>
    /// <param name="count">How many cases in a usual run.</param>
    /// <param name="print">Says what a case is, for the message of a failure.</param>
    /// <param name="found">Cases of campaigns that once broke it, as the failures named them, held before any other.</param>
    /// <param name="file">Where the law stands.</param>
    /// <param name="name">What the law is called.</param>
    /// <exception cref="LawBrokenException">The law does not hold for some case.</exception>
    public static void Holds<T>(
        this Gen<T> cases,
        Action<T> law,
        long count = 100,
        Func<T, string>? print = null,
        string[]? found = null,
        [CallerFilePath] string file = "",
        [CallerMemberName] string name = "")
    {
        LawTests.RequireMark(file, name);
        (string, string) outer = s_current;
        s_current = ($"{Path.GetFileNameWithoutExtension(file)}.{name}", "");
        try
        {
            TimeSpan before = Environment.CpuUsage.TotalTime;
            long total = Hold(cases, law, count, print, found, $"{Path.GetFileName(file)}:{name}");
            LawReport.Held(s_current.Law, total, Environment.CpuUsage.TotalTime - before);
        }
        catch (LawBrokenException broken)
        {
            LawReport.Broken(s_current.Law, broken);
            throw;
        }
        finally
        {
            s_current = outer;
        }
    }

    /// <summary>Holds a law of two parts against so many cases.</summary>
    public static void Holds<T1, T2>(
        this Gen<(T1, T2)> cases, Action<T1, T2> law, long count = 100, Func<(T1, T2), string>? print = null, string[]? found = null, [CallerFilePath] string file = "", [CallerMemberName] string name = "") =>
        cases.Holds(c => law(c.Item1, c.Item2), count, print, found, file, name);

    /// <summary>Holds a law of three parts against so many cases.</summary>
    public static void Holds<T1, T2, T3>(
        this Gen<(T1, T2, T3)> cases, Action<T1, T2, T3> law, long count = 100, Func<(T1, T2, T3), string>? print = null, string[]? found = null, [CallerFilePath] string file = "", [CallerMemberName] string name = "") =>
        cases.Holds(c => law(c.Item1, c.Item2, c.Item3), count, print, found, file, name);

    /// <summary>Holds a law of four parts against so many cases.</summary>
    public static void Holds<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> cases, Action<T1, T2, T3, T4> law, long count = 100, Func<(T1, T2, T3, T4), string>? print = null, string[]? found = null, [CallerFilePath] string file = "", [CallerMemberName] string name = "") =>
        cases.Holds(c => law(c.Item1, c.Item2, c.Item3, c.Item4), count, print, found, file, name);

    /// <summary>Whether the environment names one case alone, so that nothing can be counted.</summary>
    public static bool IsOneCase => Environment.GetEnvironmentVariable("SCNET_LAWS_CASE") is { Length: > 0 };

    /// <summary>How many cases are drawn where a law names a count: as many times more as a campaign asks for.</summary>
    public static long Total(long count) => checked(count * (long)Number("SCNET_LAWS_TIMES", 1));

    private static long Hold<T>(Gen<T> cases, Action<T> law, long count, Func<T, string>? print, string[]? found, string stream)
    {
        string[] first = Environment.GetEnvironmentVariable("SCNET_LAWS_CASE") is { Length: > 0 } single ? [single] : found ?? [];
        foreach (string once in first)
        {
            _ = Run(cases, law, PCG.Parse(once), null, out _) is { } failure ? throw failure.Report(1, 1, print) : 0;
        }

        if (IsOneCase)
        {
            return 1;
        }

        ulong seed = Number("SCNET_LAWS_SEED", UsualSeed);
        long total = Total(count);
        PCG draws = new(Stream(stream), seed);
        for (long number = 1; number <= total; number++)
        {
            if (Run(cases, law, draws, null, out Size size) is { } failure)
            {
                throw Smaller(cases, law, draws, failure, size).Report(number, total, print);
            }
        }

        return total;
    }

    private static Failure<T>? Run<T>(Gen<T> cases, Action<T> law, PCG draws, Size? limit, out Size size)
    {
        string state = draws.ToString();
        s_current.Case = state;
        T drawn = cases.Generate(draws, limit!, out size);
        if (limit is not null && !Size.IsLessThan(size, limit))
        {
            return null;
        }

        try
        {
            law(drawn);
            return null;
        }
        catch (Exception exception)
        {
            return new Failure<T>(state, drawn, exception);
        }
    }

    private static Failure<T> Smaller<T>(Gen<T> cases, Action<T> law, PCG generator, Failure<T> failure, Size size)
    {
        ulong draws = Number("SCNET_LAWS_SHRINKING", ShrinkingDraws);
        for (ulong draw = 0; draw < draws; draw++)
        {
            if (Run(cases, law, generator, size, out Size smaller) is { } found)
            {
                (failure, size) = (found, smaller);
            }
        }

        return failure;
    }

    private static ulong Number(string variable, ulong usual) =>
        Environment.GetEnvironmentVariable(variable) is { Length: > 0 } text ? ulong.Parse(text, CultureInfo.InvariantCulture) : usual;

    // a hash that does not change from run to run: FNV-1a, after G. Fowler, L. C. Noll and P. Vo (from memory)
    private static uint Stream(string text)
    {
        uint hash = 2_166_136_261;
        foreach (char c in text)
        {
            hash = unchecked((hash ^ c) * 16_777_619);
        }

        return hash;
    }

    // a converter as the document that anybody can read in again
    private static string Text(object? drawn) => drawn switch
    {
        Converter converter => $"\n{NetlistWriter.ToToml(converter)}",
        ITuple parts => string.Join(", ", Enumerable.Range(0, parts.Length).Select(k => Text(parts[k]))),
        _ => Check.Print(drawn),
    };

    private sealed record Failure<T>(string State, T Drawn, Exception Exception)
    {
        public LawBrokenException Report(long number, long total, Func<T, string>? print) => new(
            $"Case {number} of {total} breaks the law. The smallest found, SCNET_LAWS_CASE={State}: {(print is null ? Text(Drawn) : print(Drawn))}\n{Exception.Message}",
            State,
            Exception);
    }
}
