'use strict';
(() => {
  const all = (selector, within = document) => [...within.querySelectorAll(selector)];
  const say = text => { document.getElementById('said').textContent = text; };

  // tables in order of a column: by the number of a cell where it has one, else by its text; what has no value stands last
  const words = new Intl.Collator('en', { numeric: true });
  const none = new Set(['', '-', '–', '?']);
  const keyOf = cell => {
    const text = cell.textContent.trim();
    return cell.dataset.order !== undefined ? Number(cell.dataset.order) : none.has(text) ? null : text;
  };
  const compare = (a, b) => typeof a === 'number' && typeof b === 'number' ? a - b
    : typeof a === 'number' ? -1 : typeof b === 'number' ? 1 : words.compare(a, b);
  const sort = (table, column, head) => {
    const descending = head.getAttribute('aria-sort') === 'ascending';
    const body = table.tBodies[0];
    const rows = [...body.rows].map((row, index) => ({ row, index, key: keyOf(row.cells[column]) }));
    rows.sort((a, b) => a.key === null || b.key === null ? (a.key === null) - (b.key === null) || a.index - b.index
      : (descending ? -compare(a.key, b.key) : compare(a.key, b.key)) || a.index - b.index);
    body.append(...rows.map(r => r.row));
    all('th[aria-sort]', table).forEach(h => h.removeAttribute('aria-sort'));
    head.setAttribute('aria-sort', descending ? 'descending' : 'ascending');
    say(`Sorted by ${head.textContent}, ${descending ? 'descending' : 'ascending'}`);
  };
  for (const table of all('table.rows')) {
    if (table.tBodies[0].rows.length < 2 || table.classList.contains('origins')) continue;
    all('thead th', table).forEach((head, column) => {
      if (head.textContent.trim() === '') return;
      const button = document.createElement('button');
      button.type = 'button';
      button.append(...head.childNodes);
      button.addEventListener('click', () => sort(table, column, head));
      head.append(button);
    });
  }

  // search: what does not hold the words is hidden, what does is marked
  const field = document.getElementById('find');
  const count = document.getElementById('found');
  const units = all('main table tbody tr, main li, main p, main figure, main dl');
  const sections = all('main section');
  const folded = text => text.normalize('NFKC').toLowerCase();
  let marks = [], at = -1;
  const clear = () => {
    for (const mark of marks) {
      const parent = mark.parentNode;
      mark.replaceWith(...mark.childNodes);
      parent.normalize();
    }
    marks = [];
    at = -1;
    all('main [hidden]').forEach(e => { e.hidden = false; });
    all('main details').forEach(d => { d.open = false; });
  };
  const mark = (element, wanted) => {
    const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
    const texts = [];
    while (walker.nextNode()) if (!walker.currentNode.parentElement.closest('svg')) texts.push(walker.currentNode);
    for (let text of texts) {
      for (let start; (start = text.data.toLowerCase().indexOf(wanted)) >= 0;) {
        const found = text.splitText(start);
        text = found.splitText(wanted.length);
        const box = document.createElement('mark');
        found.replaceWith(box);
        box.append(found);
        marks.push(box);
      }
    }
  };
  const search = () => {
    clear();
    const wanted = folded(field.value.trim());
    if (wanted === '') {
      count.textContent = '';
      return;
    }
    const holds = element => folded(element.textContent).includes(wanted);
    for (const section of [...sections].reverse()) {
      const title = section.querySelector(':scope > :is(h2, h3, h4, h5, h6)');
      section.dataset.whole = title !== null && holds(title) ? 'yes' : '';
    }
    let found = 0;
    for (const unit of units) {
      const whole = unit.closest('section').dataset.whole === 'yes';
      const here = holds(unit);
      unit.hidden = !here && !whole && !unit.querySelector('li, tr');
      found += here ? 1 : 0;
    }
    for (const box of all('main .scnet-box, main ul, main .pictures, main .caution')) {
      box.hidden = box.querySelectorAll('tbody tr, li, figure, p').length > 0 && !box.querySelector('tbody tr:not([hidden]), li:not([hidden]), figure:not([hidden]), p:not([hidden]), dl:not([hidden])');
    }
    for (const section of [...sections].reverse()) {
      section.hidden = section.dataset.whole !== 'yes' && !section.querySelector('tbody tr:not([hidden]), li:not([hidden]), figure:not([hidden]), p:not([hidden]), dl:not([hidden])');
    }
    // a heading within a section goes with what stands below it
    for (const heading of all('main section > :is(h3, h4, h5, h6)')) {
      if (heading === heading.parentElement.firstElementChild) continue;
      let isEmpty = true;
      for (let below = heading.nextElementSibling; below !== null && !(/^H[2-6]$/.test(below.tagName) && below.tagName <= heading.tagName); below = below.nextElementSibling) {
        isEmpty &&= below.hidden || /^H[2-6]$/.test(below.tagName);
      }
      heading.hidden = isEmpty && !holds(heading);
    }
    sections.filter(s => !s.hidden).forEach(s => s.querySelectorAll(':scope > :is(h2, h3, h4, h5, h6)').forEach(h => mark(h, wanted)));
    units.filter(u => !u.hidden && !u.parentElement.closest('main li, main tr')).forEach(u => mark(u, wanted));
    // what is found in the words of a picture is shown
    all('main details').forEach(d => { d.open = d.querySelector('mark') !== null; });
    count.textContent = found === 0 && marks.length === 0 ? 'Nothing found' : `${found} ${found === 1 ? 'place' : 'places'}; Enter goes from one to the next`;
  };
  const next = step => {
    const seen = marks.filter(m => m.getClientRects().length > 0);
    if (seen.length === 0) return;
    marks.forEach(m => m.classList.remove('here'));
    at = (at + step + seen.length) % seen.length;
    seen[at].classList.add('here');
    seen[at].scrollIntoView({ block: 'center', inline: 'nearest' });
  };
  field.closest('.search').hidden = false;
  field.addEventListener('input', search);
  field.addEventListener('keydown', event => {
    if (event.key === 'Enter') next(event.shiftKey ? -1 : 1);
    if (event.key === 'Escape') { field.value = ''; search(); }
  });
  // paper holds the whole report
  addEventListener('beforeprint', () => { field.value = ''; search(); });
})();
