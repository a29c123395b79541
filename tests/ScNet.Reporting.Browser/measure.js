// What a test measures of a page; each function gives texts that name what is wrong.
window.measure = (() => {
  const name = e => `${e.tagName.toLowerCase()}${e.id ? '#' + e.id : ''} "${e.textContent.trim().slice(0, 40)}"`;

  // WCAG 2.2: relative luminance and contrast ratio
  const linear = v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  const luminance = ([r, g, b]) => 0.2126 * linear(r / 255) + 0.7152 * linear(g / 255) + 0.0722 * linear(b / 255);
  const ratio = (a, b) => {
    const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
    return (high + 0.05) / (low + 0.05);
  };
  const parse = text => {
    const numbers = (text.match(/[\d.]+/g) ?? []).map(Number);
    return text.startsWith('rgb') && (numbers.length < 4 || numbers[3] > 0) ? numbers : null;
  };
  const over = (colour, below) => colour.length < 4 ? colour : [0, 1, 2].map(i => colour[i] * colour[3] + below[i] * (1 - colour[3]));
  const shapes = new Set(['rect', 'path', 'circle', 'ellipse', 'polygon']);
  const paintOf = e => {
    const style = getComputedStyle(e);
    if (shapes.has(e.tagName)) {
      const fill = style.fill === 'none' ? null : parse(style.fill);
      return fill === null ? null : [...fill.slice(0, 3), (fill[3] ?? 1) * style.fillOpacity * style.opacity];
    }
    return e.namespaceURI.endsWith('svg') && e.tagName !== 'svg' ? null : parse(style.backgroundColor);
  };

  // what lies behind the middle of a text, from the page up
  const groundOf = (element, box) => {
    const x = box.left + box.width / 2, y = box.top + box.height / 2;
    const stack = document.elementsFromPoint(x, y);
    const from = stack.indexOf(element);
    const behind = from < 0 ? [] : stack.slice(from + (element instanceof SVGElement ? 1 : 0));
    for (let e = element; behind.length === 0 && e !== null; e = e.parentElement) behind.push(e);
    return [...behind, document.body].map(paintOf).filter(p => p !== null).reverse().reduce((below, p) => over(p, below), [255, 255, 255]);
  };

  const contrast = () => {
    const faults = [];
    let count = 0;
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const text = walker.currentNode, element = text.parentElement;
      if (text.data.trim() === '' || element.closest('script, style, title, desc, .aside, .skip:not(:focus), details:not([open]) > :not(summary)')) continue;
      const range = document.createRange();
      range.selectNodeContents(text);
      range.getBoundingClientRect().width > 0 && element.scrollIntoView({ block: 'center', inline: 'center' });
      const box = range.getBoundingClientRect();
      if (box.width === 0) continue;
      count++;
      const style = getComputedStyle(element), ground = groundOf(element, box);
      const own = parse(element instanceof SVGElement ? style.fill : style.color);
      if (own === null) {
        faults.push(`${name(element)}: no colour`);
        continue;
      }
      const size = parseFloat(style.fontSize), isLarge = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
      const found = ratio(over(own, ground), ground);
      if (found < (isLarge ? 3 : 4.5)) faults.push(`${name(element)}: ${found.toFixed(2)}, ${style.color} ${style.fill} on ${ground}`);
    }
    return { count, faults };
  };

  // what reaches beyond the page: unless it stands in a box of its own that can be moved
  const overflow = () => {
    const width = document.documentElement.clientWidth, faults = [];
    if (document.documentElement.scrollWidth > width) faults.push(`the page is ${document.documentElement.scrollWidth} wide of ${width}`);
    for (const e of document.querySelectorAll('body *')) {
      const box = e.getBoundingClientRect();
      const moved = e.closest('.scnet-box, .picture') ?? e.ownerSVGElement?.closest('.picture');
      if (box.width > 0 && box.right > width + 0.5 && (moved === null || moved === undefined || moved === e) && !e.closest('.skip, .aside')) faults.push(`${name(e)} ends at ${box.right} of ${width}`);
    }
    return faults;
  };

  const text = e => e.textContent.replace(/\s+/g, '');
  const seen = e => e.getClientRects().length > 0;
  const paper = () => ({
    tables: [...document.querySelectorAll('main table')].map(t => ({
      head: t.tHead ? text(t.tHead) : '',
      rows: [...t.tBodies].flatMap(b => [...b.rows]).filter(seen).map(text),
    })),
    figures: [...document.querySelectorAll('main figure')].map(f => ({
      texts: [...f.querySelectorAll('svg text')].filter(seen).map(text).filter(t => t !== ''),
    })),
    headings: [...document.querySelectorAll('h1, main :is(h2, h3, h4, h5, h6)')].filter(seen).map(text),
  });
  const wide = width => [...document.querySelectorAll('body *')].filter(e => !e.closest('.skip, .aside, svg') && e.getBoundingClientRect().right > width + 1).map(e => `${name(e)} ends at ${e.getBoundingClientRect().right} of ${width}`);

  return { contrast, overflow, paper, wide };
})();
