// A site or lot that a reader chooses is marked wherever it stands: in every table and in the words of pictures.
(() => {
  'use strict';
  const { make, button, plain, namesOf, tables, begin } = reportTables;
  const kinds = { site: 'Sites', lot: 'Lots' };
  const key = ({ kind, name }) => `${kind} ${name}`;
  const places = new Map(); // key of a name: the rows that name it
  for (const table of tables) {
    table.rows.forEach((element, row) => {
      for (const name of namesOf(table.data, row)) {
        if (!places.has(key(name))) places.set(key(name), { ...name, rows: [] });
        places.get(key(name)).rows.push({ table, element, row });
      }
    });
  }
  if (places.size === 0) return;

  let now = null;
  let at = -1; // which of the marked places was gone to last
  const buttons = new Map(); // key of a name: the buttons that choose it

  // The name of a row is a button. The Tab key passes it by: the list in the bar does the same in one stop.
  begin((table, row) => {
    for (const name of namesOf(table.data, row)) {
      const place = table.data.shown.indexOf(name.column);
      if (place < 0) continue;
      const cell = table.rows[row].cells[place];
      const choose = button('', { className: 'name', tabIndex: -1, 'aria-pressed': 'false' }, ...cell.childNodes);
      choose.addEventListener('click', () => mark(now === key(name) ? null : key(name)));
      cell.append(choose);
      if (!buttons.has(key(name))) buttons.set(key(name), []);
      buttons.get(key(name)).push(choose);
      if (now === key(name)) choose.setAttribute('aria-pressed', 'true');
    }
  });

  // ---- the bar ----

  const order = new Intl.Collator('en', { numeric: true }).compare;
  const list = make('select', { id: 'mark' }, make('option', { value: '' }, 'none'));
  for (const [kind, label] of Object.entries(kinds)) {
    const names = [...places.values()].filter(place => place.kind === kind).sort((a, b) => order(a.name, b.name));
    if (names.length > 0) list.append(make('optgroup', { label }, ...names.map(name => make('option', { value: key(name) }, plain(name.name)))));
  }
  list.addEventListener('change', () => mark(list.value || null));
  const next = button('Next place', { disabled: true });
  next.addEventListener('click', () => go(places.get(now).rows));
  const clear = button('Clear', { disabled: true, 'aria-label': 'Clear the mark' });
  clear.addEventListener('click', () => { mark(null); list.focus(); });
  const said = make('output', { htmlFor: 'mark' });
  const bar = make('div', { className: 'marks', role: 'group', 'aria-label': 'Mark a site or lot in every table and picture' },
    make('label', { htmlFor: 'mark' }, 'Mark a site or lot everywhere'), list, next, clear, said);
  document.querySelector('nav').after(bar);

  // ---- marking ----

  function mark(chosen) {
    if (now) {
      for (const { element } of places.get(now).rows) {
        element.classList.remove('marked');
        element.querySelectorAll('.unseen').forEach(word => word.remove());
      }
      press(now, false);
      for (const figure of document.querySelectorAll('figure svg')) figure.querySelectorAll('.marked').forEach(box => box.remove());
    }
    now = chosen;
    at = -1;
    list.value = chosen ?? '';
    next.disabled = clear.disabled = !chosen;
    document.documentElement.classList.toggle('marking', Boolean(chosen));
    if (!chosen) {
      said.textContent = 'Nothing is marked.';
      return;
    }
    const { kind, name, rows } = places.get(chosen);
    for (const { table, element } of rows) {
      element.classList.add('marked');
      element.cells[0].prepend(make('span', { className: 'unseen' }, 'marked: '));
    }
    press(chosen, true);
    const pictures = markPictures(kind, plain(name)), inTables = new Set(rows.map(row => row.table)).size;
    said.textContent = `${plain(name)} is marked in ${inTables} table${inTables === 1 ? '' : 's'}` + (pictures > 0 ? ` and ${pictures} picture${pictures === 1 ? '' : 's'}.` : '.');
  }

  function press(name, pressed) {
    for (const one of buttons.get(name) ?? []) one.setAttribute('aria-pressed', pressed);
  }

  // Words of a picture that name it, whole or shortened, are framed. A number on an axis may read the same and is none of them.
  function markPictures(kind, name) {
    let pictures = 0;
    for (const picture of document.querySelectorAll('figure svg')) {
      const words = [...picture.querySelectorAll(`text[data-${kind}]`)].filter(({ dataset }) => dataset[kind] === name.replace(/[\p{Cc}\p{Cf}]/gu, ' '));
      for (const word of words) {
        const { x, y, width, height } = word.getBBox(), box = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
        for (const [side, value] of Object.entries({ class: 'marked', x: x - 4, y: y - 2, width: width + 8, height: height + 4 })) box.setAttribute(side, value);
        if (word.hasAttribute('transform')) box.setAttribute('transform', word.getAttribute('transform'));
        word.before(box);
      }
      pictures += words.length > 0;
    }
    return pictures;
  }

  // To the next marked row, opening what it is folded in.
  function go(rows) {
    const seen = rows.filter(({ element }) => element.isConnected);
    if (seen.length === 0) return;
    at = (at + 1) % seen.length;
    const { element } = seen[at], cell = element.cells[0];
    element.closest('details')?.setAttribute('open', '');
    cell.tabIndex = -1;
    cell.focus({ preventScroll: true });
    element.scrollIntoView({ block: 'center', inline: 'nearest' });
    said.textContent = `Place ${at + 1} of ${seen.length}: ${element.closest('table').caption.textContent}.`;
  }
})();
