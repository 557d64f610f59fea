/* What if: controls that look figures up in grids of the library. Nothing is computed here but places between nodes. */
(() => {
  'use strict';
  const neighbours = 4;
  const scales = { 'linear': x => x, 'logarithm': Math.log, 'logarithm-of-rest': x => Math.log(1 - x) };

  // Along each axis a polynomial through the nodes around the place (Lagrange): the same as Grid.At in the library, which tests hold to the printed digit.
  const lookUp = (grid, at) => {
    const sum = (axis, index) => {
      if (axis === grid.axes.length) return grid.values[index];
      const { nodes, scale } = grid.axes[axis], place = scales[scale](at[axis]), places = nodes.map(scales[scale]);
      const count = Math.min(neighbours, nodes.length);
      let above = 0, total = 0;
      while (above < nodes.length && nodes[above] < at[axis]) above++;
      const first = Math.min(Math.max(above - 2, 0), nodes.length - count);
      for (let node = first; node < first + count; node++) {
        let weight = 1;
        for (let other = first; other < first + count; other++) if (other !== node) weight *= (place - places[other]) / (places[node] - places[other]);
        if (weight !== 0) total += weight * sum(axis + 1, index * nodes.length + node);
      }
      return total;
    };
    return sum(0, 0);
  };

  // The one rule of rounding, as the library prints.
  const significant = (value, whole) => {
    const size = Math.abs(value);
    if (size > whole) whole = Infinity;
    if (size === 0 || size === whole) return value.toFixed(0);
    const near = size > whole / 2, distance = near ? whole - size : size;
    let decimals = Math.min(Math.max((near ? 1 : 2) - Math.floor(Math.log10(Math.max(distance, 1e-300))), 0), 4);
    if (size >= 10 && distance >= 1) decimals = size >= 100 && whole === Infinity ? 0 : 1;
    const [digits, rest] = value.toFixed(decimals).split('.');
    return digits.replace(/\B(?=(\d{3})+$)/g, ',') + (rest ? '.' + rest : '');
  };
  const print = { share: value => significant(value * 100, 100) + ' %', number: value => significant(value, Infinity), days: value => String(value) };

  const make = (parent, name, properties, attributes) => parent.appendChild(reportTables.make(name, { ...properties, ...attributes }));

  // A share is typed in per cent, with the digits that it has and no more.
  const typed = (control, value) => control.unit === 'share' ? String(Number((value * 100).toPrecision(10))) : String(value);
  const read = (control, text) => text.trim() === '' ? NaN : control.unit === 'share' ? Number((Number(text) / 100).toPrecision(10)) : Number(text);

  const open = box => {
    const view = JSON.parse(box.querySelector('script').textContent);
    const grids = new Map(view.grids.map(grid => [grid.id, grid]));
    const state = { ...view.choices[0].values };
    const figure = id => id in state ? state[id] : lookUp(grids.get(id), grids.get(id).axes.map(axis => figure(axis.id)));
    const fields = [];
    let later = 0;

    for (const control of view.controls) {
      const id = 'what-if-' + view.id + '-' + control.id, low = control.stops[0], high = control.stops[control.stops.length - 1];
      const unit = control.unit === 'share' ? '%' : 'days';
      const part = make(box, 'div', { className: 'control' });
      make(part, 'label', { htmlFor: id, textContent: control.label + (control.unit === 'share' ? ', per cent' : '') });
      const number = make(part, 'input', { type: 'number', id, min: typed(control, low), max: typed(control, high), step: control.unit === 'share' ? 'any' : '1', inputMode: 'decimal' }, { 'aria-describedby': id + '-known' });
      const slider = make(part, 'input', { type: 'range', min: '0', max: String(control.stops.length - 1), step: '1' }, { 'aria-label': control.label + ', slider' });
      make(part, 'output', { id: id + '-known', className: 'note', textContent: 'From ' + typed(control, low) + ' to ' + typed(control, high) + ' ' + unit + '; ' + control.known + '.' }, { 'aria-live': 'off' });
      const nearest = () => control.stops.reduce((best, stop, index) => Math.abs(stop - state[control.id]) < Math.abs(control.stops[best] - state[control.id]) ? index : best, 0);
      const show = from => {
        if (from !== number) { number.value = typed(control, state[control.id]); number.removeAttribute('aria-invalid'); }
        if (from !== slider) slider.value = String(nearest());
        slider.setAttribute('aria-valuetext', typed(control, state[control.id]) + ' ' + unit);
      };
      const whole = value => control.unit === 'days' ? Math.round(value) : value;
      number.addEventListener('input', () => {
        const value = read(control, number.value), fits = value >= low && value <= high && value === whole(value);
        if (!fits) { number.setAttribute('aria-invalid', 'true'); return; }
        number.removeAttribute('aria-invalid');
        state[control.id] = value;
        show(number);
        say();
      });
      // What lies outside goes to the nearest end; what is no number, back to where it was.
      number.addEventListener('change', () => {
        const value = read(control, number.value);
        if (!Number.isNaN(value)) state[control.id] = whole(Math.min(Math.max(value, low), high));
        show(); say();
      });
      slider.addEventListener('input', () => { state[control.id] = control.stops[Number(slider.value)]; show(slider); say(); });
      fields.push(show);
    }

    const choices = make(box, 'div', { className: 'choices' });
    const buttons = view.choices.map(choice => {
      const button = make(choices, 'button', { type: 'button', textContent: choice === view.choices[0] ? 'Back to the start' : choice.name + ', as stated' });
      button.addEventListener('click', () => { Object.assign(state, choice.values); for (const show of fields) show(); say(); });
      return [button, choice.values];
    });
    const said = make(box, 'output', { className: 'said' }, { 'aria-live': 'off' });
    const heard = make(box, 'output', { className: 'heard' }, { 'aria-live': 'polite' });
    const say = first => {
      for (const [button, values] of buttons) button.setAttribute('aria-pressed', String(Object.entries(values).every(([id, value]) => state[id] === value)));
      said.textContent = '';
      for (const piece of view.says) {
        if (piece.figure === null) said.append(piece.text);
        else make(said, 'b', { textContent: print[piece.unit](figure(piece.figure)) }, { 'data-figure': piece.figure });
      }
      // Heard once the reader has come to rest, not at every step.
      clearTimeout(later);
      if (first !== true) later = setTimeout(() => { heard.textContent = said.textContent; }, 700);
    };
    for (const show of fields) show();
    say(true);
    box.hidden = false;
  };

  for (const box of document.querySelectorAll('.what-if')) open(box);
})();
