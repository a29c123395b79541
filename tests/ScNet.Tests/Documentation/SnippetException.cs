namespace ScNet.Tests.Documentation;

/// <summary>A snippet that cannot be read, does not compile, does not run or prints something else than its page says.</summary>
internal sealed class SnippetException(string page, int line, string message, Exception? cause = null)
    : Exception($"{page}, line {line}: {message}", cause);
