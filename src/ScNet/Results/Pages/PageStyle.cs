namespace ScNet.Results.Pages;

/// <summary>The style of a page that stands where there is none, among the cells of a notebook: readable on light and dark ground alike.</summary>
internal static class PageStyle
{
    // what notebooks say of all tables is overruled; colours come from the surroundings; greys are half transparent
    public const string Css = """
        .scnet-page { font-size: .95em; line-height: 1.4; }
        .scnet-page .scnet-box, .scnet-page pre { overflow-x: auto; }
        .scnet-page h3 { font-size: 1.25em; margin: .2em 0 .5em; }
        .scnet-page h4 { font-size: 1.1em; margin: 1em 0 .3em; }
        .scnet-page h5 { font-size: 1em; margin: .8em 0 .3em; }
        .scnet-page table { border-collapse: collapse; margin: .4em 0 .8em; color: inherit; background: none; border: 0; }
        .scnet-page caption { caption-side: top; text-align: left; font-style: italic; padding: .2em 0; color: inherit; opacity: .8; }
        .scnet-page tbody tr, .scnet-page thead tr { background: none; }
        .scnet-page th, .scnet-page td { padding: .2em .7em; border: 0; border-bottom: 1px solid rgba(128, 128, 128, .35); text-align: left !important; vertical-align: top; white-space: nowrap; }
        .scnet-page thead th { border-bottom: 2px solid rgba(128, 128, 128, .7); vertical-align: bottom; }
        .scnet-page table.figures th { font-weight: normal; opacity: .8; }
        .scnet-page .figure { text-align: right !important; font-variant-numeric: tabular-nums; }
        .scnet-page ul.caution { border-left: 4px solid #c60; padding-left: 1.6em; }
        .scnet-page pre { margin: .2em 0; color: inherit; background: none; white-space: pre-wrap; }
        """;
}
