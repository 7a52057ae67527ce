// The whole wall: what is laid in outline, what is new in black, the course at work numbered at both sides.

const PAPER = 680;
const picture = {scale: 1, left: 0, floor: 0, states: null, view: null, last: null, paper: false};

// ``marked`` are the courses whose numbers are told large, the one at work first.
function drawPicture(states, marked, words) {
  const box = find("picture"), {length, height} = wall();
  const side = 34, width = picture.paper ? PAPER : Math.max(200, box.clientWidth), share = now.mode === "practice" ? 0.2 : 0.36;
  const most = picture.paper ? PAPER / 2 : Math.max(90, innerHeight * (innerWidth >= 900 ? 0.4 : share));
  const scale = Math.min((width - 2 * side) / length, most / height);
  const high = height * scale + 16;
  Object.assign(picture, {last: [states, marked, words], scale, left: (width - length * scale) / 2, floor: high - 9, states});
  const view = draw("rect", {class: "view", visibility: "hidden"});
  picture.view = view;
  box.replaceChildren(draw("svg", {viewBox: `0 0 ${width} ${high.toFixed(1)}`, width, height: high.toFixed(1), role: "img",
    class: UNIT_HEIGHT * scale < 6 ? "far" : "near", "aria-label": words}, ...drawWall(states), ...drawNumbers(marked), view));
}

function boxOf(left, bottom, right, top) {
  const {scale} = picture;
  return [picture.left + left * scale, picture.floor - top * scale, (right - left) * scale, (top - bottom) * scale];
}

// A closed line through corners, each told by its distance from the left and its height over the footing.
function trace(corners, across, up) {
  let path = "";
  for (let at = 0; at < corners.length; at += 2) path += `${at ? "L" : "M"}${across(corners[at]).toFixed(1)} ${up(corners[at + 1]).toFixed(1)}`;
  return path;
}

function drawWall(states) {
  const paths = ["", "", "", ""], cuts = ["", "", "", ""], {outline, footing} = wall();
  const across = (at) => picture.left + at * picture.scale, up = (level) => picture.floor - level * picture.scale;
  wall().courses.forEach((_, index) => {
    const course = readCourse(index);
    states[index].forEach((state, at) => {
      const [left, long, low, high, style, , , , , , , corners] = course.pieces[at];
      if (!long || state === NOT_YET) return;
      if (corners) {
        paths[state] += `${trace(corners, (x) => across(left + x), (y) => up(course.bottom + low + y))}z`;
        return;
      }
      const [x, y, w, h] = boxOf(left, course.bottom + low, left + long, course.bottom + low + high).map((one) => one.toFixed(1));
      paths[state] += `M${x} ${y}h${w}v${h}h-${w}z`;
      if (read(style) === "cut") cuts[state] += `M${x} ${+y + +h}l${w} -${h}`;
    });
  });
  return [
    draw("path", {class: "outline", d: `${trace(outline, across, up)}z`}),
    ...["", "laid", "new", "other"].flatMap((name, state) => [
      draw("path", {class: name, d: paths[state]}), draw("path", {class: `${name} sawn`, d: cuts[state]})]),
    ...drawOpenings(),
    draw("path", {class: "footing", d: trace(footing, across, (level) => up(level) + 2)}),
  ];
}

function drawOpenings() {
  const {openings, controls, height} = wall();
  const holes = openings.flatMap(([left, bottom, right, top, name]) => {
    const [x, y, w, h] = boxOf(left, bottom, right, top);
    const words = read(name), fits = words.length * 7 < w - 4 && h > 16;
    return [draw("rect", {class: "opening", x, y, width: w, height: h}),
            ...(fits ? [draw("text", {class: "name", x: x + w / 2, y: y + h / 2 + 4}, words)] : [])];
  });
  const joints = controls.map((at) => {
    const [x, y, , h] = boxOf(at, 0, at, height);
    return draw("path", {class: "control", d: `M${x - 1.5} ${y}v${h}M${x + 1.5} ${y}v${h}`});
  });
  return [...holes, ...joints];
}

function drawNumbers(marked) {
  const shown = wall().courses.map(([number, bottom, top], index) => ({number, index, y: picture.floor - (bottom + top) / 2 * picture.scale}));
  const usual = shown.filter((one) => one.number === 1 || one.number % 5 === 0);
  const spaced = [...marked.map((index) => shown[index]), ...usual].reduce((kept, one) =>
    kept.some((other) => Math.abs(one.y - other.y) < 14) ? kept : [...kept, one], []);
  const edges = [[picture.left - 6, "end"], [picture.left + wall().length * picture.scale + 6, "start"]];
  return edges.flatMap(([x, anchor]) => spaced.map((one) =>
    draw("text", {class: marked.includes(one.index) ? "number own" : "number", x, y: one.y + 4, "text-anchor": anchor}, String(one.number))));
}

function drawMasonsLine(course) {
  if (!course.pieces.length) return;
  const left = Math.min(...course.pieces.map((one) => one[0])), right = Math.max(...course.pieces.map((one) => one[0] + one[1]));
  const [x, y, w] = boxOf(left, course.bottom, right, course.top);
  picture.view.before(draw("path", {class: "line-up", d: `M${x - 4} ${y}h${w + 8}`}));
}

function markView(course, from, to) {
  const view = picture.view, {length, courses} = wall();
  const whole = to - from >= length * 0.98;
  view.setAttribute("visibility", whole || course === null ? "hidden" : "visible");
  if (whole || course === null) return;
  const [x, y, w, h] = boxOf(Math.max(0, from), courses[course][1], Math.min(length, to), courses[course][2]);
  Object.entries({x: x - 3, y: y - 3, width: w + 6, height: h + 6}).forEach(([name, value]) => view.setAttribute(name, value.toFixed(1)));
}

function pieceUnder(event) {
  const area = find("picture").firstElementChild.getBoundingClientRect();
  const x = (event.clientX - area.left - picture.left) / picture.scale, y = (picture.floor - (event.clientY - area.top)) / picture.scale;
  const index = wall().courses.findIndex(([, bottom, top]) => y >= bottom && y <= top);
  if (index < 0) return null;
  const at = readCourse(index).pieces.findIndex(([left, long], place) =>
    picture.states[index][place] !== NOT_YET && x >= left && x <= left + long);
  return at < 0 ? null : {course: index, place: at};
}

function listenToPicture(onStep, onPick) {
  const box = find("picture");
  let from = null;
  box.addEventListener("pointerdown", (event) => { from = event; });
  box.addEventListener("pointercancel", () => { from = null; });
  box.addEventListener("pointerup", (event) => {
    if (!from) return;
    const across = event.clientX - from.clientX, along = event.clientY - from.clientY;
    from = null;
    if (Math.abs(across) > 40 && Math.abs(across) > 2 * Math.abs(along)) onStep(across < 0 ? 1 : -1);
    else if (Math.hypot(across, along) < 10) {
      const found = pieceUnder(event);
      if (found) onPick(found);
    }
  });
}
