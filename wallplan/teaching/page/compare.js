// An odd and an even course, one over the other, with the lap between their joints.

function countPairs() {
  return Math.max(1, wall().courses.length - 1);
}

function showPair(at) {
  const single = wall().courses.length < 2;
  const upper = readCourse(single ? 0 : at), lower = single ? null : readCourse(at - 1);
  const states = wall().courses.map(([, , , row], index) => wall().rows[row].map(() =>
    index === upper.index ? NEW : lower && index === lower.index ? OTHER : LAID));
  const names = lower ? `Courses ${lower.number} and ${upper.number}` : "One course only";
  drawPicture(states, lower ? [upper.index, lower.index] : [upper.index], `The whole wall. ${names} are marked.`);
  nameCourse(upper, lower ? `Course ${upper.number} over course ${lower.number}, pulled apart` : names);
  drawStrip({course: upper, show: () => NEW, below: lower, both: true});
  const kinds = lower ? [lower, upper].map((one) => `Course ${one.number} (${one.number % 2 ? "odd" : "even"}): ${one.count}.`) : [];
  say(names, [upper.beside, ...kinds, lower ? "All odd courses share one set of joints, all even courses another, wherever they reach." : ""]);
}
