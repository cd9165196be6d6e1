// The calculator for the roof, worked out on the phone: the same curves, limits and words as the
// service has, so that it answers where there is no connection.
(() => {
  'use strict';
  const form = document.querySelector('form.roof');
  const place = document.getElementById('answer');
  if (!form || !place) {
    return;
  }
  const si = form.dataset.si === 'yes';
  const ZERO_C = 273.15;
  const KPA_PER_PSI = 0.45359237 * 9.80665 / (0.0254 * 0.0254) / 1000;
  const SLACK = 1e-9;
  // of the reader's language, where it is no point
  const decimal = document.documentElement.dataset.decimal;

  // half up, as a person rounds; a hair above it for what binary fractions take away
  const rounded = (value, decimals) => {
    const power = 10 ** decimals;
    const near = Math.floor(Math.abs(value) * power + 0.5 + 1e-9) / power;
    const digits = (value < 0 && near !== 0 ? -near : near).toFixed(decimals);
    return decimal ? digits.replace('.', decimal) : digits;
  };
  const celsius = (c) => (si ? rounded(c, 1) + ' °C' : rounded(c * 1.8 + 32, 1) + ' °F');
  const kelvin = (k) => (si ? rounded(k, 1) + ' K' : rounded(k * 1.8, 1) + ' °F');
  const gauge = (kpa) => (si ? rounded(kpa, 0) + ' kPag' : rounded(kpa / KPA_PER_PSI, 0) + ' psig');
  const absolute = (kpa) => (si ? rounded(kpa, 0) + ' kPa abs' : rounded(kpa / KPA_PER_PSI, 0) + ' psia');

  // straight lines of ln p over 1/T between the nodes
  const segment = (nodes, value) => {
    let i = 0;
    while (i < nodes.length - 2 && nodes[i + 1] <= value) {
      i++;
    }
    return i;
  };
  const pressure = (curve, c) => {
    const t = curve.c;
    if (!(c >= t[0] - SLACK && c <= t[t.length - 1] + SLACK)) {
      return NaN;
    }
    const i = segment(t, c);
    const x = (n) => 1 / (t[n] + ZERO_C);
    const y = (n) => Math.log(curve.kpa[n]);
    return Math.exp(y(i) + (1 / (c + ZERO_C) - x(i)) * (y(i + 1) - y(i)) / (x(i + 1) - x(i)));
  };
  const temperature = (curve, kpa) => {
    const p = curve.kpa;
    if (!(kpa >= p[0] * (1 - SLACK) && kpa <= p[p.length - 1] * (1 + SLACK))) {
      return NaN;
    }
    const i = segment(p, kpa);
    const x = (n) => 1 / (curve.c[n] + ZERO_C);
    const slope = (x(i + 1) - x(i)) / (Math.log(p[i + 1]) - Math.log(p[i]));
    return 1 / (x(i) + (Math.log(kpa) - Math.log(p[i])) * slope) - ZERO_C;
  };
  // the standard atmosphere (ICAO Doc 7488, lowest layer), as the service has it
  const air = (metres) => (metres >= -500 && metres <= 11000 ? 101.325 * (1 - 0.0065 * metres / 288.15) ** 5.25588 : NaN);

  // thousands as the reader's language parts them
  const GROUPED = decimal === ',' ? /^[+-]?[1-9]\d{0,2}(\.\d{3})+(,\d*)?$/ : /^[+-]?[1-9]\d{0,2}(,\d{3})+(\.\d*)?$/;
  const typed = (name) => {
    const plain = form.elements[name].value.replace(/\s/g, '').replace('\u2212', '-');
    const text = GROUPED.test(plain) ? plain.replaceAll(decimal === ',' ? '.' : ',', '') : plain;
    return text === '' ? null : Number(/^[^.,]*,[^.,]*$/.test(text) ? text.replace(',', '.') : text);
  };
  const make = (name, text, attributes) => {
    const made = document.createElement(name);
    if (text) {
      made.textContent = text;
    }
    Object.entries(attributes || {}).forEach(([key, value]) => made.setAttribute(key, value));
    return made;
  };

  const verdict = (limits, ambientC, splitK, expectedK) => {
    const excess = splitK - expectedK;
    const hair = 1e-9;
    if (splitK < limits.splitLeast - hair) return 'impossible';
    if (ambientC < limits.ambientLeast - hair) return 'too-cool';
    if (-excess > limits.watch + hair) return 'low';
    if (excess <= limits.watch + hair) return 'as-expected';
    if (excess <= limits.limit + hair) return 'watch';
    return excess > limits.full + hair ? 'far' : 'high';
  };
  const told = (limits, code, ambientC, splitK, expectedK) => {
    const excess = splitK - expectedK;
    const template = code === 'impossible' || code === 'too-cool' ? code : excess < 0 ? 'under' : 'judged';
    const facts = {
      split: kelvin(splitK),
      expected: kelvin(expectedK),
      excess: kelvin(Math.abs(excess)),
      short: kelvin(Math.abs(excess)),
      ambient: celsius(ambientC),
      watch: kelvin(limits.watch),
      full: kelvin(limits.full),
      limit: code === 'impossible' ? kelvin(limits.splitLeast) : code === 'too-cool' ? celsius(limits.ambientLeast) : kelvin(limits.limit),
    };
    return { template, facts };
  };

  const field = (name, value) => {
    const box = make('div');
    box.append(make('dt', name), make('dd', value));
    return box;
  };
  const FIELDS = ['refrigerant', 'ambient', 'split', 'head', 'elevation'];
  const HELP = { head: 'head-help' };
  const mended = () => FIELDS.forEach((name) => {
    const input = form.elements[name];
    input.removeAttribute('aria-invalid');
    input.removeAttribute('aria-describedby');
    if (HELP[name]) {
      input.setAttribute('aria-describedby', HELP[name]);
    }
    document.getElementById(name + '-wrong')?.remove();
  });
  const wrong = (said) => {
    Object.entries(said).forEach(([name, text]) => {
      const input = form.elements[name];
      const id = name + '-wrong';
      input.setAttribute('aria-invalid', 'true');
      input.setAttribute('aria-describedby', HELP[name] ? HELP[name] + ' ' + id : id);
      input.after(make('span', text, { class: 'wrong', id }));
    });
    const box = make('div', '', { class: 'stop-sign', role: 'alert' });
    const line = make('p');
    line.append(make('b', 'Nothing could be worked out.'), ' What needs mending is told at its field.');
    box.append(line);
    place.replaceChildren(box);
  };

  const answer = (data) => {
    const name = form.elements.refrigerant.value.trim();
    const key = name.toUpperCase().replace(/[^A-Z0-9]/g, '').replace(/^(?:REFRIGERANT|HCFO|HCFC|HFC|HFO|CFC|PFC|HC|R)(?=[0-9])/, '');
    const curve = data.curves.find((each) => each.designation === data.names[key]);
    const ambient = typed('ambient');
    const split = typed('split');
    const head = typed('head');
    const height = typed('elevation') ?? 0;
    mended();
    if (!name || ambient === null || split === null) {
      return;
    }
    const said = {};
    if (!curve) {
      said.refrigerant = 'This must be a refrigerant of the list, as on the nameplate, such as R-404A.';
    }
    Object.entries({ ambient, split, head: head ?? 0, elevation: height }).forEach(([field, value]) => {
      if (!Number.isFinite(value)) {
        said[field] = 'This must be a number.';
      }
    });
    if (split <= 0) {
      said.split = 'This must be above zero, as a condenser is warmer than its air.';
    }
    const airKpa = height === 0 ? 101.325 : air(si ? height : height * 0.3048);
    if (Number.isNaN(airKpa)) {
      said.elevation ??= 'This must lie from -500 m to 11000 m (-1640 ft to 36089 ft).';
    }
    if (Object.keys(said).length) {
      wrong(said);
      return;
    }
    document.getElementById('cautions-list').replaceChildren(...curve.cautions.map((each) => make('li', each)));
    const ambientC = si ? ambient : (ambient - 32) / 1.8;
    const splitK = si ? split : split / 1.8;
    const condensingC = ambientC + splitK;
    const kpa = pressure(curve, condensingC);
    if (Number.isNaN(kpa)) {
      wrong({ ambient: curve.designation + ' at ' + celsius(condensingC) + ' is outside its saturation table. Check the readings and the refrigerant.' });
      return;
    }
    const expected = make('section', '', { class: 'verdict', 'aria-labelledby': 'expected-head' });
    expected.append(make('h2', 'To expect', { id: 'expected-head' }));
    const gauges = make('dl', '', { class: 'gauges' });
    gauges.append(field('Condensing temperature', celsius(condensingC)), field('Head pressure', gauge(kpa - airKpa)));
    expected.append(gauges, make('p', curve.designation + ' condensing ' + kelvin(splitK) + ' above ' + celsius(ambientC) + ' ambient is at '
      + celsius(condensingC) + ', which by the midpoint of its saturation curve is ' + absolute(kpa), { class: 'said' }), make('p', curve.source, { class: 'source' }));
    place.replaceChildren(expected);
    if (head === null) { // only what to expect is asked
      return;
    }
    const readC = temperature(curve, (si ? head : head * KPA_PER_PSI) + airKpa);
    if (Number.isNaN(readC)) {
      wrong({ head: curve.designation + ' at ' + head + ' is outside its saturation table. Check the reading, its unit and the refrigerant.' });
      return;
    }
    const code = verdict(data.limits, ambientC, readC - ambientC, splitK);
    const why = told(data.limits, code, ambientC, readC - ambientC, splitK);
    const says = data.verdicts.find((each) => each.code === code);
    const read = make('section', '', { class: 'verdict roof-' + code, 'aria-labelledby': 'read-head' });
    const shown = make('dl', '', { class: 'gauges' });
    shown.append(field('Split read', kelvin(readC - ambientC)));
    const checks = make('ol', '', { class: 'whys next' });
    says.next.forEach((each) => {
      const line = make('li', each.text);
      line.append(make('p', each.source, { class: 'source' }));
      checks.append(line);
    });
    read.append(make('h2', says.said, { id: 'read-head' }), shown,
      make('p', data.templates[why.template].replace(/\{(\w+)\}/g, (all, fact) => why.facts[fact]), { class: 'said' }),
      make('h3', 'What to check next'), checks);
    place.append(read);
  };

  fetch('/refrigerants/curves').then((got) => got.json()).then((data) => {
    const asked = new URLSearchParams(location.search);
    for (const name of FIELDS) {
      // a page kept on this phone knows nothing of what its address asks
      if (asked.get(name) && !form.dataset.asked) {
        form.elements[name].value = asked.get(name);
      }
    }
    if (!form.dataset.asked) {
      answer(data);
    }
    form.dataset.ready = 'yes';
    form.addEventListener('input', () => answer(data));
    form.addEventListener('submit', (event) => {
      if (form.reportValidity()) {
        event.preventDefault();
        answer(data);
        place.focus();
      }
    });
  }).catch(() => {});
})();
