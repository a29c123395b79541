// Checks the links of a built site: every page, picture and heading that a page of it points to is there, and
// nothing that a page needs to be shown comes from elsewhere. The argument is the folder of the site.
using System.Net;
using System.Text.RegularExpressions;

string site = Path.GetFullPath(args[0]);
Dictionary<string, HashSet<string>> headings = [];
SortedSet<string> faults = [];
int checkedLinks = 0;
foreach (string page in Directory.EnumerateFiles(site, "*.html", SearchOption.AllDirectories))
{
    string html = Regex.Replace(File.ReadAllText(page), "<!--.*?-->", string.Empty, RegexOptions.Singleline);
    foreach (Match tag in Regex.Matches(html, "<(?<tag>a|link|img|script|iframe|source)\\b[^>]*?\\b(?:href|src)=\"(?<to>[^\"]*)\"", RegexOptions.Singleline))
    {
        Check(page, tag.Groups["tag"].Value, WebUtility.HtmlDecode(tag.Groups["to"].Value));
    }
}

foreach (string fault in faults)
{
    Console.WriteLine(fault);
}

Console.WriteLine($"{checkedLinks} links, {faults.Count} broken");
return faults.Count == 0 && checkedLinks > 1000 ? 0 : 1;

void Check(string page, string tag, string to)
{
    checkedLinks++;
    string from = Path.GetRelativePath(site, page);
    if (Regex.IsMatch(to, "^([a-z]+:|//)"))
    {
        if (tag != "a" && !to.StartsWith("data:", StringComparison.Ordinal))
        {
            faults.Add($"{from}: {tag} from elsewhere: {to}");
        }

        return;
    }

    string[] parts = to.Split('#', 2);
    string path = Uri.UnescapeDataString(parts[0].Split('?')[0]);
    string target = path.Length == 0 ? page : Path.GetFullPath(Path.Combine(Path.GetDirectoryName(page)!, path));
    target = Directory.Exists(target) ? Path.Combine(target, "index.html") : target;
    if (!File.Exists(target))
    {
        faults.Add($"{from}: nothing at {to}");
    }
    else if (parts.Length == 2 && parts[1].Length > 0 && target.EndsWith(".html", StringComparison.Ordinal) && !HeadingsOf(target).Contains(Uri.UnescapeDataString(parts[1])))
    {
        faults.Add($"{from}: no heading at {to}");
    }
}

HashSet<string> HeadingsOf(string page)
{
    if (!headings.TryGetValue(page, out HashSet<string>? names))
    {
        names = [.. Regex.Matches(File.ReadAllText(page), "\\b(?:id|name)=\"([^\"]*)\"").Select(m => WebUtility.HtmlDecode(m.Groups[1].Value))];
        headings.Add(page, names);
    }

    return names;
}
