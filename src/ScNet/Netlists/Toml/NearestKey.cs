namespace ScNet.Netlists.Toml;

/// <summary>The known key that an unknown one most likely stands for.</summary>
internal static class NearestKey
{
    /// <summary>By meaning first, then by spelling; null where none is near.</summary>
    /// <param name="key">The unknown key.</param>
    /// <param name="known">The keys that there are.</param>
    /// <param name="meanings">What else people call the keys, without signs and in lower case; the first that is known is meant.</param>
    public static string? Of(string key, string[] known, (string Key, string[] Others)[] meanings)
    {
        string plain = Plain(key);
        foreach ((string meant, string[] others) in meanings)
        {
            if (Array.IndexOf(known, meant) >= 0 && Array.IndexOf(others, plain) >= 0)
            {
                return meant;
            }
        }

        return NearestName.Of(key, known);
    }

    /// <summary>Letters and digits alone, in lower case.</summary>
    public static string Plain(string key) => string.Concat(key.Where(char.IsLetterOrDigit)).ToLowerInvariant();
}
