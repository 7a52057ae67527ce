// Wires the page: what to do, which wall, back and next by button, key, slider and swipe.

const MODES = {
  courses: {count: () => wall().courses.length, show: showCourses, name: (at, of) => `Course ${at} of ${of}`},
  laid: {count: () => wall().steps.length, show: showLaid, name: (at, of) => `Step ${at} of ${of}`},
  pairs: {count: countPairs, show: showPair, name: (at) => wall().courses.length > 1 ? `Courses ${at} and ${at + 1}` : "Course 1"},
  practice: {count: countQuestions, show: showQuestion, name: (at, of) => `Question ${at} of ${of}`},
  list: {count: () => 1, show: () => {}, name: () => ""},
};

const HINTS = {
  courses: "Go on with Next, or swipe across the wall. Tap any piece to see why it is there.",
  laid: "Go on with Next. The numbers on the pieces say in which turn they are laid.",
  pairs: "Go on with Next to see the next two courses.",
  practice: "Tap the piece that you would lay here.",
};

function whereKept() {
  return `${now.wall} ${now.mode}`;
}

function show() {
  const mode = MODES[now.mode], of = mode.count(), slide = find("slide");
  const at = now.at[whereKept()] = between(1, now.at[whereKept()] || 1, of);
  document.body.dataset.mode = now.mode;
  find("wall-name").textContent = `${wall().name}: ${wall().size}`;
  slide.max = of;
  slide.value = at;
  slide.setAttribute("aria-valuetext", mode.name(at, of));
  find("where").textContent = mode.name(at, of);
  find("back").disabled = at === 1;
  find("next").disabled = at === of;
  for (const id of ["piece", "offers", "verdict"]) find(id).replaceChildren();
  mode.show(at);
  if (at === 1 && now.mode !== "list") find("say").append(make("p", {class: "hint"}, HINTS[now.mode]));
}

function step(by) {
  go((now.at[whereKept()] || 1) + by);
}

function go(to) {
  const next = between(1, to, MODES[now.mode].count());
  if (next === now.at[whereKept()]) return;
  now.at[whereKept()] = next;
  show();
}

function setMode(mode) {
  now.mode = mode;
  for (const button of document.querySelectorAll("nav [data-mode]")) button.setAttribute("aria-pressed", String(button.dataset.mode === mode));
  show();
}

function setWall(index) {
  now.wall = index;
  find("which").value = index;
  for (const list of document.querySelectorAll(".courses[data-wall]")) list.classList.toggle("away", +list.dataset.wall !== index);
  show();
}

function pickFromPicture({course, place: at}) {
  if (now.mode === "practice" || !strip.scroll) return;
  if (!find("strip").querySelector(`[data-course="${course}"][data-place="${at}"]`)) lookAt(course);
  choose(course, at);
}

// A piece of an older course is shown close up with its whole course; the step stays where it is.
function lookAt(index) {
  const course = readCourse(index), states = picture.states[index];
  nameCourse(course);
  drawStrip({course, show: (at) => states[at], below: index ? readCourse(index - 1) : null});
}

function onKey(event) {
  const by = {ArrowRight: 1, ArrowLeft: -1, PageDown: 1, PageUp: -1}[event.key];
  if (by === undefined || event.altKey || event.ctrlKey || event.metaKey || event.target.closest("input, select, .scroll")) return;
  if (now.mode === "list") return;
  event.preventDefault();
  step(by);
}

// On paper the wall is drawn as wide as the sheet; where nothing of it was shown, all of it is.
function toPaper() {
  picture.paper = true;
  if (now.mode === "courses" || now.mode === "laid" || now.mode === "pairs") return drawPicture(...picture.last);
  drawPicture(wall().courses.map(([, , , row]) => wall().rows[row].map(() => LAID)), [], "The whole wall.");
  find("say").replaceChildren();
}

function fromPaper() {
  picture.paper = false;
  show();
}

function setDark(dark) {
  document.documentElement.classList.toggle("dark", dark);
  find("dark").setAttribute("aria-pressed", String(dark));
}

function listen() {
  find("back").addEventListener("click", () => step(-1));
  find("next").addEventListener("click", () => step(1));
  find("slide").addEventListener("input", (event) => go(+event.target.value));
  find("dark").addEventListener("click", () => setDark(find("dark").getAttribute("aria-pressed") !== "true"));
  find("which").addEventListener("change", (event) => setWall(+event.target.value));
  document.querySelector("nav").addEventListener("click", (event) => {
    const mode = event.target.closest("[data-mode]")?.dataset.mode;
    if (mode) setMode(mode);
  });
  document.addEventListener("keydown", onKey);
  listenToPicture(step, pickFromPicture);
  addEventListener("beforeprint", toPaper);
  addEventListener("afterprint", fromPaper);
  let wide = innerWidth, waiting = 0;
  addEventListener("resize", () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => { if (innerWidth !== wide) { wide = innerWidth; show(); } }, 100);
  });
}

function start() {
  if (!told.walls.length) return;
  document.body.classList.remove("quiet");
  document.querySelector("nav").hidden = false;
  told.walls.forEach((one, index) => find("which").append(make("option", {value: index}, one.name)));
  document.querySelector(".which").hidden = told.walls.length < 2;
  listen();
  setWall(0);
  performance.mark("drawn");
}

start();
