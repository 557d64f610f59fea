// Tables: sort by a column, filter by site, lot and days, copy as the file has it. The values stand beside each table as JSON.
const reportTables = (() => {
  'use strict';
  const firstRows = 40;
  const tables = [];
  const whenRowShows = [];

  // An element with properties, attributes (names with a hyphen) and children.
  function make(name, properties, ...children) {
    const element = document.createElement(name);
    for (const [key, value] of Object.entries(properties ?? {})) {
      if (key.includes('-')) element.setAttribute(key, value);
      else element[key] = value;
    }
    element.append(...children);
    return element;
  }

  const button = (words, properties, ...children) => make('button', { type: 'button', ...properties }, words, ...children);

  // ---- values ----

  // A column of numbers or days is one text joined by semicolons, or its only value, fractions without their zero; one of texts the places,
  // joined, then each text once; no places where each row has its own text, or all the same.
  function column(data, index) {
    const known = data.read ??= [];
    if (known[index]) return known[index];
    const written = data.values[index], all = () => Array(data.rows);
    if (typeof written === 'string') {
      return known[index] = data.rows > 1 && written.includes(';') ? written.split(';').map(text => (text[0] === '.' ? '0' + text : text)) : all().fill(written);
    }
    const [places, ...texts] = written;
    if (texts.length === data.rows) return known[index] = texts;
    return known[index] = places === '' ? all().fill(texts[0]) : places.split(';').map(place => texts[place]);
  }

  // What a row is sorted by; null where there is nothing to sort by.
  function sortable(kind, text) {
    if (text === '' || text === 'hidden') return null;
    return kind === 'n' ? Number(text) : text;
  }

  const words = new Intl.Collator('en', { numeric: true });

  function comparison(data, index, down) {
    const kind = data.kinds[index], keys = column(data, index).map(text => sortable(kind, text));
    const compare = kind === 'n' ? (a, b) => a - b : kind === 'd' ? (a, b) => (a < b ? -1 : a > b ? 1 : 0) : words.compare;
    return (one, other) => {
      const [a, b] = [keys[one], keys[other]];
      if (a === null || b === null) return (a === null) - (b === null) || one - other;
      return (down ? -compare(a, b) : compare(a, b)) || one - other;
    };
  }

  // The sites or lots that a row names. What kind of name it is may stand in a column, also as "new-lot".
  function namesOf(data, row) {
    return data.names.map(([index, kind]) => ({ column: index, kind: typeof kind === 'string' ? kind : column(data, kind)[row].replace('new-', ''), name: column(data, index)[row] }))
      .filter(({ kind, name }) => (kind === 'site' || kind === 'lot') && name !== '' && name !== 'hidden');
  }

  // A file has an apostrophe before a name that a spreadsheet would run; a reader sees the name.
  const plain = name => name.replace(/^'(?=[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20])/, '').replace(/[\t\n\r]/g, ' ');

  // ---- showing ----

  function chosen(table) {
    const { data, filter } = table, days = data.day >= 0 && (filter.from || filter.to) ? column(data, data.day) : null;
    let rows = table.rows.map((_, row) => row);
    for (const kind of ['site', 'lot']) {
      if (filter[kind]) rows = rows.filter(row => namesOf(data, row).some(name => name.kind === kind && name.name === filter[kind]));
    }
    if (days) rows = rows.filter(row => days[row] !== '' && days[row] !== 'hidden' && (!filter.from || days[row] >= filter.from) && (!filter.to || days[row] <= filter.to));
    if (table.sort) rows.sort(comparison(data, table.sort.column, table.sort.down));
    return rows;
  }

  function show(table, tell) {
    const order = table.order = chosen(table), [first, rest] = table.bodies;
    const parts = rest ? [order.slice(0, firstRows), order.slice(firstRows)] : [order];
    parts.forEach((rows, index) => table.bodies[index].replaceChildren(...rows.map(row => table.rows[row])));
    dress(table, rest && !rest.classList.contains('open') ? parts[0] : order);
    offerMore(table);
    first.hidden = order.length === 0;
    reach(table.box);
    if (tell) table.said.textContent = standing(table);
  }

  function offerMore({ more, order, bodies: [, rest] }) {
    if (!more) return;
    more.hidden = order.length <= firstRows;
    more.textContent = rest.classList.contains('open') ? `Show the first ${firstRows} rows` : `Show all ${order.length.toLocaleString('en')} rows`;
  }

  function standing({ data, order, sort, heads }) {
    const counted = order.length === data.rows ? `All ${data.rows.toLocaleString('en')} rows` : order.length === 0 ? 'No row' : `${order.length.toLocaleString('en')} of ${data.rows.toLocaleString('en')} rows`;
    const ends = { n: ['lowest first', 'highest first'], d: ['earliest first', 'latest first'], t: ['from A to Z', 'from Z to A'] };
    return counted + (sort ? `, by ${heads[sort.place].textContent}, ${ends[data.kinds[sort.column]][+sort.down]}` : ', as written') + '.';
  }

  // Rows get what other parts of the script add to them when they are seen the first time.
  function dress(table, rows) {
    for (const row of rows) {
      if (table.dressed[row]) continue;
      table.dressed[row] = true;
      for (const work of whenRowShows) work(table, row);
    }
  }

  // A box is a stop of the Tab key only where there is something to scroll to.
  function reach(box) {
    if (box.scrollWidth > box.clientWidth + 1) box.tabIndex = 0;
    else box.removeAttribute('tabindex');
  }

  // ---- copying ----

  const field = text => (/[,"\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

  function asFile({ data, order }) {
    const columns = data.columns.map((_, index) => column(data, index));
    return [data.columns, ...order.map(row => columns.map(values => values[row]))].map(row => row.map(field).join(',') + '\n').join('');
  }

  async function copy(table) {
    const text = asFile(table);
    table.said.textContent = await put(text, table.panel)
      ? `Copied ${table.order.length.toLocaleString('en')} of ${table.data.rows.toLocaleString('en')} rows with all ${table.data.columns.length} columns of tables/${table.data.table}.csv.`
      : 'The browser does not let a page copy. The text is marked: copy it with its own key.';
  }

  // The clipboard where the browser has one for files; else what is marked is copied; else it stays marked for the reader's own key.
  async function put(text, place) {
    try {
      await navigator.clipboard.writeText(text);
      return true;
    } catch {
      const back = document.activeElement;
      const area = make('textarea', { value: text, readOnly: true, className: 'copied', 'aria-label': 'Rows as CSV' });
      place.querySelector('.copied')?.remove();
      place.append(area);
      area.select();
      if (!document.execCommand('copy')) return false;
      area.remove();
      back.focus();
      return true;
    }
  }

  // ---- controls ----

  function sortBy(table, place) {
    const index = table.data.shown[place], now = table.sort;
    table.sort = now?.place !== place ? { place, column: index, down: false } : now.down ? null : { ...now, down: true };
    table.heads.forEach((head, at) => {
      if (table.sort?.place === at) head.setAttribute('aria-sort', table.sort.down ? 'descending' : 'ascending');
      else head.removeAttribute('aria-sort');
    });
    show(table, true);
  }

  function makeHeads(table) {
    table.heads.forEach((head, place) => {
      const sort = button('', { className: 'sort', tabIndex: -1, 'aria-describedby': table.element.caption.id }, ...head.childNodes);
      sort.addEventListener('click', () => sortBy(table, place));
      head.append(sort);
    });
  }

  function labelled(label, control, caption) {
    control.setAttribute('aria-label', `${label}: ${caption}`);
    return make('label', null, label + ' ', control);
  }

  // Made when they are asked for: a list of a thousand sites in every table would slow the page.
  function fill(table) {
    const { data, panel, caption, filter } = table, change = key => event => { filter[key] = event.target.value; show(table, true); };
    for (const kind of ['site', 'lot']) {
      const names = new Set(table.rows.flatMap((_, row) => namesOf(data, row).filter(name => name.kind === kind).map(name => name.name)));
      if (names.size < 2) continue;
      const list = make('select', null, make('option', { value: '' }, `All ${kind}s`), ...[...names].sort(words.compare).map(name => make('option', { value: name }, plain(name))));
      list.addEventListener('change', change(kind));
      panel.append(labelled(kind === 'site' ? 'Site' : 'Lot', list, caption));
    }
    const days = data.day < 0 ? [] : column(data, data.day).filter(day => day !== '' && day !== 'hidden').sort();
    if (days.length > 1 && days[0] !== days.at(-1)) {
      for (const [key, label] of [['from', 'From'], ['to', 'To']]) {
        const day = make('input', { type: 'date', min: days[0], max: days.at(-1) });
        day.addEventListener('change', change(key));
        panel.append(labelled(label, day, caption));
      }
    }
    const copying = button('Copy as CSV', { 'aria-label': `Copy as CSV: ${caption}` });
    copying.addEventListener('click', () => copy(table));
    const reset = button('As written', { 'aria-label': `As written: ${caption}` });
    reset.addEventListener('click', () => {
      table.sort = null;
      for (const key of Object.keys(filter)) delete filter[key];
      for (const control of panel.querySelectorAll('select, input')) control.value = '';
      for (const head of table.heads) head.removeAttribute('aria-sort');
      show(table, true);
    });
    panel.append(copying, reset);
  }

  function makeTools(table) {
    const { box, caption } = table, place = box.firstElementChild;
    table.panel = make('div', { className: 'panel', hidden: true });
    const opener = button('Sort, filter, copy', { className: 'opener', 'aria-expanded': 'false', 'aria-label': `Sort, filter, copy: ${caption}` });
    opener.addEventListener('click', () => {
      const open = table.panel.hidden;
      if (open && !table.panel.firstChild) fill(table);
      table.panel.hidden = !open;
      opener.setAttribute('aria-expanded', open);
      box.classList.toggle('sorting', open);
      for (const head of table.heads) head.firstElementChild.tabIndex = open ? 0 : -1;
      reach(box);
    });
    table.said = make('output', null);
    box.insertBefore(make('div', { className: 'tools' }, opener, table.panel, table.said), place);
  }

  // The rows after the first are folded; on paper and on the screen alike until a reader asks for them.
  function makeMore(table) {
    const rest = table.bodies[1];
    if (!rest) return;
    // A browser may put off what is not in sight.
    table.box.addEventListener('contentvisibilityautostatechange', () => reach(table.box));
    table.more = button('', { className: 'more' });
    table.more.addEventListener('click', () => {
      const open = rest.classList.toggle('open');
      let below = table.box.nextElementSibling;
      while (!below.matches('.columns, .paper') && !below.querySelector('.paper')) below = below.nextElementSibling;
      for (const word of [below, ...below.querySelectorAll('.paper')]) if (word.matches('.paper')) word.hidden = open;
      show(table, true);
    });
    table.element.after(table.more);
  }

  document.documentElement.classList.add('scripted');
  document.querySelectorAll('.scroll > table').forEach((element, number) => {
    const box = element.parentElement;
    element.caption.id ||= `table-${number + 1}`;
    const table = {
      element, box, caption: element.caption.textContent, data: JSON.parse(box.querySelector('script').textContent),
      heads: [...element.tHead.rows[0].cells], bodies: [...element.tBodies], rows: [...element.tBodies].flatMap(body => [...body.rows]),
      filter: {}, sort: null, dressed: [],
    };
    table.order = table.rows.map((_, row) => row);
    makeHeads(table);
    makeTools(table);
    makeMore(table);
    tables.push(table);
  });

  const sizes = new ResizeObserver(entries => { for (const entry of entries) reach(entry.target); });
  for (const table of tables) sizes.observe(table.box);

  return {
    make, button, plain, namesOf, tables,
    // Calls back for each row when it is seen the first time, now for those that are.
    begin(work) {
      whenRowShows.push(work);
      for (const table of tables) {
        dress(table, table.order.slice(0, firstRows));
        offerMore(table);
      }
    },
  };
})();
