"use strict";
// What the page was told: the layout as data, how far the learner has come, and small ways to read and to make elements.

const told = JSON.parse(document.getElementById("data").textContent);
const [UNIT_LENGTH, UNIT_HEIGHT, UNIT_KIND] = told.unit;
const DRAWN = "http://www.w3.org/2000/svg";
const NOT_YET = 0, LAID = 1, NEW = 2, OTHER = 3;

const now = {mode: "courses", wall: 0, at: {}};

function find(id) {
  return document.getElementById(id);
}

// A fraction stays on the line of its number.
function read(place) {
  return told.texts[place].replace(/(\d) (\d+\/\d+)/g, "$1\u00a0$2");
}

function wall() {
  return told.walls[now.wall];
}

function readCourse(index) {
  const [number, bottom, top, row, why, laps, count, height, beside] = wall().courses[index];
  return {index, number, bottom, top, pieces: wall().rows[row], why: why.map(read), laps,
          count: read(count), height: read(height), beside: read(beside)};
}

function readPiece(course, place) {
  const [left, length, low, height, ...rest] = course.pieces[place];
  const [style, label, short, name, size, why] = rest.slice(0, 6).map(read), corners = rest[7] || null;
  const bottom = course.bottom + low;
  return {place, left, length, right: left + length, low, bottom, top: bottom + height, height, style, label, short, name, size, why,
          corners};
}

function readEdge(ticks) {
  const known = wall().known ??= new Map(wall().edges);
  return known.has(ticks) ? read(known.get(ticks)) : "";
}

function make(name, attributes = {}, ...inside) {
  return fill(document.createElement(name), attributes, inside);
}

function draw(name, attributes = {}, ...inside) {
  return fill(document.createElementNS(DRAWN, name), attributes, inside);
}

function fill(element, attributes, inside) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === false || value === null || value === undefined) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...inside.filter((one) => one !== null && one !== ""));
  return element;
}

function place(element, sizes) {
  for (const [name, value] of Object.entries(sizes)) element.style[name] = `${value.toFixed(1)}px`;
  return element;
}

function between(least, value, most) {
  return Math.max(least, Math.min(most, value));
}
