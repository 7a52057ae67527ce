// One course close up, each piece a button, and under it the course that it laps, pulled apart to show by how much.

const BAND = 30, EDGE = 14;
const strip = {across: 1, course: null, scroll: null};

function measureStrip() {
  const room = find("strip").clientWidth;
  let full = between(112, room / (room < 600 ? 3 : 7), 190);
  if (full * UNIT_HEIGHT / UNIT_LENGTH < 46) full = between(full, 46 * UNIT_LENGTH / UNIT_HEIGHT, 260);
  const across = full / UNIT_LENGTH;
  return {across, up: Math.max(across, 46 / UNIT_HEIGHT)};
}

// ``show`` says of each piece of the course how it stands; ``below`` is the course under it (null for none), its pieces buttons
// where ``both``; ``order`` gives pieces their turn in laying; ``extra`` is drawn over the course.
function drawStrip({course, show, below = null, both = false, order = null, extra = []}) {
  const {across, up} = measureStrip(), high = (course.top - course.bottom) * up;
  const low = below ? (below.top - below.bottom) * up : 0, wide = wall().length * across + 2 * EDGE;
  const kept = strip.wall === now.wall && strip.scroll ? strip.scroll.scrollLeft : 0;
  Object.assign(strip, {across, up, high, course: course.index, wall: now.wall});
  const line = make("div", {class: "line"}, drawHoles(course, wide, high), drawLine(course, show, up, 0, high, order),
    ...(below ? [drawLaps(course, show, wide, high), both ? drawLine(below, () => OTHER, up, high + BAND, low, null)
      : drawBelow(below, wide, up, high + BAND, low)] : [drawFooting(wide, high)]), ...extra);
  place(line, {width: wide, height: high + (below ? BAND + low : 24) + 4});
  const empty = !line.querySelector("button");  // what scrolls must be reached by key, if by no piece then by itself
  strip.scroll = make("div", {class: "scroll", onscroll: tellView, tabindex: empty ? 0 : null, role: empty ? "group" : null,
    "aria-label": empty ? `Course ${course.number}, nothing laid yet` : null}, line);
  find("strip").replaceChildren(strip.scroll);
  strip.scroll.scrollLeft = kept;
  showSome(course, show);
  rove(line);
  tellView();
}

// A course that begins far from the end is scrolled to where it begins.
function showSome(course, show) {
  const from = (strip.scroll.scrollLeft - EDGE) / strip.across, to = from + strip.scroll.clientWidth / strip.across;
  const shown = course.pieces.filter((_, at) => show(at) !== NOT_YET);
  if (!shown.length || shown.some(([left, long]) => left < to && left + long > from)) return;
  strip.scroll.scrollLeft = Math.min(...shown.map(([left]) => left)) * strip.across;
}

function drawLine(course, show, up, from, high, order) {
  const list = make("ul", {class: "pieces", "aria-label": `Course ${course.number}, left to right`});
  const shown = course.pieces.map((_, at) => at).filter((at) => show(at) !== NOT_YET && course.pieces[at][1] > 0);
  shown.sort((one, two) => course.pieces[one][0] - course.pieces[two][0]);
  shown.forEach((at, turn) => list.append(make("li", {}, drawButton(course, at, show(at), turn, shown.length, order, up, from + high))));
  return list;
}

function drawButton(course, at, state, turn, count, order, up, floor) {
  const piece = readPiece(course, at), wide = piece.length * strip.across, laid = order && order.get(at);
  const words = [`${turn + 1} of ${count} in course ${course.number}: ${piece.name}, ${piece.size}`, laid ? `laid ${laid}` : ""];
  const face = wide < 26 ? [] : [laid ? make("b", {class: "turn"}, laid) : "", make("span", {}, piece.label), make("small", {}, piece.short)];
  const shape = ["", "laid", "new", "other"][state], shaped = piece.corners ? " shaped" : "";
  if (shaped) face.unshift(drawShape(piece, wide, up));
  const button = make("button", {type: "button", class: `piece ${shape} ${piece.style}${wide < 46 ? " narrow" : ""}${shaped}`,
    "aria-pressed": "false", "aria-label": words.filter(Boolean).join(", "), tabindex: -1,
    "data-course": course.index, "data-place": at, onclick: () => choose(course.index, at)}, ...face);
  return place(button, {left: EDGE + piece.left * strip.across, top: floor - (piece.low + piece.height) * up,
    width: wide, height: piece.height * up});
}

function drawShape(piece, wide, up) {
  const high = piece.height * up, d = trace(piece.corners, (x) => x * strip.across, (y) => high - y * up);
  return draw("svg", {class: "shape", width: wide, height: high, "aria-hidden": "true"}, draw("path", {d: `${d}z`}));
}

// Openings and control joints beside which the course stops.
function drawHoles(course, wide, high) {
  const parts = [];
  wall().openings.filter(([, bottom, , top]) => bottom < course.top && top > course.bottom).forEach(([left, , right, , name]) => {
    const x = EDGE + left * strip.across, w = (right - left) * strip.across, words = read(name);
    parts.push(draw("path", {class: "jambs", d: `M${x} 0v${high}M${x + w} 0v${high}`}));
    if (words.length * 8 < w - 8) parts.push(draw("text", {x: x + w / 2, y: high / 2 + 5}, words));
  });
  wall().controls.forEach((at) => parts.push(draw("path", {class: "jambs", d: `M${EDGE + at * strip.across} 0v${high}`})));
  return draw("svg", {class: "below", width: wide, height: high, "aria-hidden": "true"}, ...parts);
}

function drawBelow(below, wide, up, from, low) {
  const paths = {whole: "", part: "", cut: "", apart: ""};
  const labels = [];
  below.pieces.forEach((_, at) => {
    const piece = readPiece(below, at);
    if (!piece.length) return;
    const x = EDGE + piece.left * strip.across, w = piece.length * strip.across, h = piece.height * up;
    const y = low - (piece.low + piece.height) * up + 1;
    if (piece.corners) paths[piece.style] += `${trace(piece.corners, (at) => x + at * strip.across, (level) => y + h - level * up)}z`;
    else paths[piece.style] += `M${x.toFixed(1)} ${y.toFixed(1)}h${w.toFixed(1)}v${h.toFixed(1)}h-${w.toFixed(1)}z`;
    if (w > piece.label.length * 7 + 8) labels.push(draw("text", {x: x + w / 2, y: y + h / 2 + 4}, piece.label));
  });
  const drawing = draw("svg", {class: "below", width: wide, height: low + 3, "aria-hidden": "true", focusable: "false"},
    ...Object.entries(paths).map(([style, d]) => draw("path", {class: style, d})), ...labels);
  return place(drawing, {top: from});
}

function drawFooting(wide, from) {
  return place(draw("svg", {class: "below", width: wide, height: 8, "aria-hidden": "true"}, draw("path", {class: "footing", d: `M0 5H${wide}`})), {top: from});
}

function drawLaps(course, show, wide, from) {
  const parts = [];
  course.laps.forEach(([joint, under, words]) => {
    const edges = course.pieces.some(([left, long], at) => show(at) !== NOT_YET && Math.abs(left + long - joint) < UNIT_LENGTH / 8);
    if (!edges) return;
    const x = EDGE + joint * strip.across, foot = EDGE + under * strip.across, text = read(words), span = Math.abs(x - foot);
    parts.push(draw("path", {class: "dots", d: `M${x} 0V${BAND}M${foot} ${BAND}V4`}));
    if (span > text.length * 7.5 + 4) parts.push(draw("text", {x: (x + foot) / 2, y: BAND / 2 + 5}, text),
      draw("path", {class: "span", d: `M${Math.min(x, foot)} ${BAND - 5}H${Math.max(x, foot)}`}));
  });
  return place(draw("svg", {class: "laps", width: wide, height: BAND, "aria-hidden": "true"}, ...parts), {top: from});
}

function rove(line) {
  const buttons = [...line.querySelectorAll("button.piece")];
  const first = buttons.find((one) => one.classList.contains("new")) || buttons[0];
  if (first) first.tabIndex = 0;
  line.addEventListener("keydown", (event) => {
    const step = {ArrowRight: 1, ArrowLeft: -1, Home: -buttons.length, End: buttons.length}[event.key];
    const at = buttons.indexOf(document.activeElement);
    if (step === undefined || at < 0) return;
    event.preventDefault();
    event.stopPropagation();
    buttons[at].tabIndex = -1;
    const next = buttons[between(0, at + step, buttons.length - 1)];
    next.tabIndex = 0;
    next.focus();
    next.click();
  });
}

function tellView() {
  const {scroll, across} = strip;
  if (scroll && scroll.clientWidth && strip.wall === now.wall) markView(strip.course, (scroll.scrollLeft - EDGE) / across, (scroll.scrollLeft + scroll.clientWidth - EDGE) / across);
}

function scrollStripTo(left, length) {
  const {scroll, across} = strip, middle = EDGE + (left + length / 2) * across;
  scroll.scrollLeft = Math.max(0, middle - scroll.clientWidth / 2);
  tellView();
}

function choose(course, at) {
  const piece = readPiece(readCourse(course), at);
  for (const button of find("strip").querySelectorAll("button.piece")) {
    const own = +button.dataset.course === course && +button.dataset.place === at;
    button.setAttribute("aria-pressed", String(own));
    if (own) button.scrollIntoView({block: "nearest", inline: "nearest"});
  }
  const reach = `Course ${wall().courses[course][0]}, from ${readEdge(piece.left)} to ${readEdge(piece.right)} from the left end.`;
  find("piece").replaceChildren(make("h3", {}, piece.name), make("p", {}, `${piece.size}. ${reach}`), make("p", {}, make("b", {}, "Why: "), piece.why));
}
