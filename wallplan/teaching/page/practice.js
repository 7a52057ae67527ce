// Practice: pick the next piece. What is right was measured by the rules before the page was made; here it is only told.

const marks = new Map();

function countQuestions() {
  return Math.max(1, wall().practice.length);
}

function answersOf() {
  if (!marks.has(now.wall)) marks.set(now.wall, wall().practice.map(() => ({tries: 0, done: false, picked: new Set()})));
  return marks.get(now.wall);
}

function showQuestion(at) {
  if (!wall().practice.length) return showNothingToPick();
  const [index, gap, words] = wall().practice[at - 1], answer = answersOf()[at - 1], course = readCourse(index);
  const before = (place) => course.pieces[place][0] < course.pieces[gap][0] || (answer.done && place === gap);
  const states = wall().courses.map(([, , , row], here) => wall().rows[row].map((_, place) =>
    here < index ? LAID : here > index || !before(place) ? NOT_YET : place === gap ? NEW : LAID));
  drawPicture(states, [index], `The wall so far: ${index} whole courses, and course ${course.number} up to the place that is asked for.`);
  nameCourse(course, `Course ${course.number} so far`);
  const piece = readPiece(course, gap);
  drawStrip({course, show: (place) => states[index][place], below: index ? readCourse(index - 1) : null,
             extra: answer.done ? [] : [drawGap(piece, course)]});
  scrollStripTo(piece.left, UNIT_LENGTH / 2);
  say(`Question ${at} of ${wall().practice.length}`, [read(words), tellScore()]);
  showOffers(at);
}

function showNothingToPick() {
  showCourses(wall().courses.length);
  find("offers").replaceChildren();
  say("Nothing to pick", ["This wall leaves no choice: each place takes one piece only."]);
}

function drawGap(piece, course) {
  const open = wall().length - piece.left, wide = Math.min(UNIT_LENGTH, open) * strip.across;
  const height = (course.top - course.bottom) * strip.up;
  return place(make("div", {class: "gap", "aria-hidden": "true"}, "?"),
    {left: EDGE + piece.left * strip.across, top: height - piece.height * strip.up, width: wide, height: piece.height * strip.up});
}

function tellScore() {
  const done = answersOf().filter((one) => one.done), first = done.filter((one) => one.tries === 1).length;
  return done.length ? `Right at the first pick: ${first} of ${done.length}.` : "";
}

function showOffers(at) {
  const [, , , offers] = wall().practice[at - 1], answer = answersOf()[at - 1];
  find("offers").replaceChildren(...offers.map(([length, name, size, kind], turn) => {
    const seen = answer.picked.has(turn), mark = seen ? {right: "✓ right", dearer: "– not the best", wrong: "✗ wrong"}[read(kind)] : "";
    const bar = place(make("span", {class: "bar", "aria-hidden": "true"}), {width: between(4, length / UNIT_LENGTH * 104, 120)});
    return make("button", {type: "button", class: `offer ${seen ? read(kind) : ""}`, "data-turn": turn, "aria-disabled": answer.done && !seen ? "true" : null,
      onclick: () => pick(at, turn)}, make("span", {class: "words"}, make("b", {}, read(name)), " ", make("span", {class: "size"}, read(size))), bar, make("span", {class: "mark"}, mark));
  }));
}

function pick(at, turn) {
  const answer = answersOf()[at - 1], offer = wall().practice[at - 1][3][turn];
  if (answer.done && !answer.picked.has(turn)) return;
  const [length, name, size, kind, words, fault] = offer, right = read(kind) === "right";
  if (!answer.done && !answer.picked.has(turn)) answer.tries += 1;
  answer.picked.add(turn);
  if (right && !answer.done) answer.done = true;
  showQuestion(at);
  const last = at === wall().practice.length && answer.done;
  find("verdict").replaceChildren(...[make("h3", {}, {right: "Right", dearer: "It could be laid", wrong: "Not this one"}[read(kind)]),
    make("p", {}, read(words).replace(/^Right\. /, "")),
    last ? make("p", {}, `That was the last question. ${tellScore()}`) : right ? make("p", {}, "Press Next for the next one.") : ""].filter(Boolean));
  if (!right) drawTried(wall().practice[at - 1], length, `${read(name)} ${read(size)}`, fault);
  find("offers").children[turn].focus({preventScroll: true});
}

function drawTried([index, gap], length, words, fault) {
  const course = readCourse(index), piece = readPiece(course, gap), line = find("strip").querySelector(".line");
  const height = (course.top - course.bottom) * strip.up, top = height - piece.height * strip.up;
  line.querySelector(".gap")?.remove();
  line.append(place(make("div", {class: "tried", "aria-hidden": "true"}, length * strip.across < 64 ? "" : words),
    {left: EDGE + piece.left * strip.across, top, width: length * strip.across, height: piece.height * strip.up}));
  if (fault >= 0) line.append(place(make("div", {class: "fault", "aria-hidden": "true"}, "✗"), {left: EDGE + fault * strip.across, top: height - 4}));
  scrollStripTo(piece.left, length);
}
