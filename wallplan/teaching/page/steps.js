// Building up: course by course, or in the order in which a wall is really laid.

function showCourses(at) {
  const course = readCourse(at - 1), last = wall().courses.length;
  const states = wall().courses.map(([, , , row], index) =>
    wall().rows[row].map(() => index < at - 1 ? LAID : index === at - 1 ? NEW : NOT_YET));
  drawPicture(states, [at - 1], `The wall with ${at} of ${last} courses laid. Course ${course.number} is new.`);
  nameCourse(course);
  drawStrip({course, show: () => NEW, below: at > 1 ? readCourse(at - 2) : null});
  say(`Course ${course.number} of ${last}`, [`${course.count}.`, ...course.why, course.height]);
}

function showLaid(at) {
  const states = wall().courses.map(([, , , row]) => wall().rows[row].map(() => NOT_YET));
  wall().steps.slice(0, at).forEach(([, , course, pieces], index) =>
    pieces.forEach((piece) => { states[course][piece] = index === at - 1 ? NEW : LAID; }));
  const [title, why, index, pieces, closes, line] = wall().steps[at - 1], course = readCourse(index);
  const own = pieces.filter((piece) => readPiece(course, piece).style !== "apart" || readPiece(course, piece).label === "lintel");
  const order = new Map(own.map((piece, turn) => [piece, closes && turn === own.length - 1 ? "last" : `${turn + 1}.`]));
  drawPicture(states, [index], `Step ${at} of ${wall().steps.length}, ${read(title)}. New pieces: ${pieces.length}.`);
  if (line) drawMasonsLine(course);
  nameCourse(course);
  drawStrip({course, show: (place) => states[index][place], below: index ? readCourse(index - 1) : null, order});
  const first = course.pieces[pieces[0]];
  scrollStripTo(first[0], first[1]);
  say(read(title), [read(why), course.why[0] || ""]);
}

function nameCourse(course, words = `Course ${course.number} close up`) {
  find("course-name").textContent = `${words}. Tap a piece.`;
}

function say(title, lines) {
  find("say").replaceChildren(make("h3", {}, title), ...lines.filter(Boolean).map((line) => make("p", {}, line)));
}
