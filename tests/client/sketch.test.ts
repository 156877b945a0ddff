// The sketch of a field: where fences lie beside each other, what a hand moves, how fixes are averaged.

import assert from "node:assert/strict";
import { test } from "node:test";

import { average } from "../../webclient/src/sketch/average.ts";
import { draw, nearest, roundLength } from "../../webclient/src/sketch/drawing.ts";
import { layOut, putAt, spotOf, wayTo } from "../../webclient/src/sketch/layout.ts";
import { metresTo, nearestFirst } from "../../webclient/src/sketch/nearest.ts";
import { NO_POSITION, type Position } from "../../webclient/src/recording/position.ts";

const at = (record_id: string, position: Partial<Position>) => ({ record_id, body: { ...NO_POSITION, ...position } });
const near = (found: number, wanted: number, within: number) => assert.ok(Math.abs(found - wanted) <= within, `${found} is not ${wanted} ± ${within}`);

// Lengths of a degree at 45 degrees on WGS 84: 111,132 m northwards, 78,847 m eastwards (Snyder, Map Projections:
// A Working Manual, USGS Professional Paper 1395, table 7 of degree lengths; from memory to the metre).
const NORTH_M = 111_132;
const EAST_M = 78_847;

test("located fences lie about their middle, metre for metre", () => {
  const { spots, middle } = layOut([at("a", { latitude: 45, longitude: 7, position_accuracy_m: 8 }), at("b", { latitude: 45.001, longitude: 7.002, position_accuracy_m: 5 })]);
  const way = wayTo(spots.get("a")!, spots.get("b")!);
  near(way.distance_m, Math.hypot(0.001 * NORTH_M, 0.002 * EAST_M), 0.05);
  near(spots.get("a")!.x + spots.get("b")!.x, 0, 0.02);
  near(middle!.latitude, 45.0005, 1e-6);
  assert.deepEqual([spots.get("a")!.accuracy_m, way.compass], [8, "ne"]);
});

test("a field across the date line is one field", () => {
  const { spots } = layOut([at("a", { latitude: -17, longitude: 179.9995 }), at("b", { latitude: -17, longitude: -179.9995 })]);
  near(wayTo(spots.get("a")!, spots.get("b")!).distance_m, 106.5, 0.5); // 0.001° at 17° S
});

test("bearings run clockwise from north", () => {
  const from = { x: 0, y: 0 };
  const ways = [[0, 9], [9, 9], [9, 0], [9, -9], [0, -9], [-9, -9], [-9, 0], [-9, 9]].map(([x, y]) => wayTo(from, { x: x!, y: y! }));
  assert.deepEqual(ways.map(({ bearing_deg }) => Math.round(bearing_deg)), [0, 45, 90, 135, 180, 225, 270, 315]);
  assert.deepEqual(ways.map(({ compass }) => compass), ["n", "ne", "e", "se", "s", "sw", "w", "nw"]);
});

test("where no phone has been, a hand places fences in the sketch's own metres", () => {
  const first = putAt(NO_POSITION, layOut([at("a", {})]), undefined, 0, 0);
  assert.deepEqual(first, { ...NO_POSITION, sketch_east_m: 0, sketch_north_m: 0 });
  const layout = layOut([at("a", first)]);
  assert.deepEqual(putAt(first, layout, layout.spots.get("a"), 5, -10), { ...NO_POSITION, sketch_east_m: 5, sketch_north_m: -10 });
});

test("a hand on located ground writes the ground, and the phone's accuracy no longer holds", () => {
  const fences = [at("a", { latitude: 51.5, longitude: -1.25, position_accuracy_m: 6 }), at("b", { latitude: 51.501, longitude: -1.25, position_accuracy_m: 6 }), at("c", {})];
  const layout = layOut(fences);
  const spot = layout.spots.get("a")!;
  const moved = putAt(fences[0]!.body, layout, spot, spot.x + 5, spot.y);
  assert.deepEqual([moved.position_accuracy_m, moved.sketch_east_m], [null, null]);
  const again = layOut([at("a", moved), fences[1]!]).spots;
  const before = wayTo(layout.spots.get("b")!, spot), after = wayTo(again.get("b")!, again.get("a")!);
  near(after.distance_m, Math.hypot(before.distance_m, 5), 0.05);
  const placed = putAt(NO_POSITION, layout, undefined, 30, 40);
  const where = spotOf(layout, { latitude: placed.latitude!, longitude: placed.longitude! })!;
  near(where.x, 30, 0.02);
  near(where.y, 40, 0.02);
});

test("a fence that is both drawn and located ties the sketch to the ground; without one the drawn stay apart", () => {
  const drawn = [at("a", { sketch_east_m: 0, sketch_north_m: 0 }), at("b", { sketch_east_m: 100, sketch_north_m: 0 })];
  const ground = at("c", { latitude: 51.5, longitude: -1.25, position_accuracy_m: 5 });
  assert.deepEqual([...layOut([...drawn, ground]).spots.keys()], ["c"]);
  const stood = { ...drawn[0]!, body: { ...drawn[0]!.body, latitude: 51.5005, longitude: -1.25, position_accuracy_m: 9 } };
  const { spots } = layOut([stood, drawn[1]!, ground]);
  near(wayTo(spots.get("a")!, spots.get("b")!).distance_m, 100, 0.01);
  assert.equal(wayTo(spots.get("a")!, spots.get("b")!).compass, "e");
  assert.equal(spots.get("b")!.accuracy_m, null);
});

test("moving the fence that ties them takes its drawn place along, so that the others stay", () => {
  const tie = at("a", { latitude: 51.5, longitude: -1.25, position_accuracy_m: 5, sketch_east_m: 10, sketch_north_m: 10 });
  const layout = layOut([tie]);
  const moved = putAt(tie.body, layout, layout.spots.get("a"), 5, 0);
  assert.deepEqual([moved.sketch_east_m, moved.sketch_north_m], [15, 10]);
});

test("a loose drawn fence put onto located ground becomes a tie", () => {
  const loose = at("a", { sketch_east_m: 50, sketch_north_m: 0 });
  const layout = layOut([loose, at("c", { latitude: 51.5, longitude: -1.25 })]);
  const put = putAt(loose.body, layout, undefined, 20, 0);
  assert.ok(put.latitude !== null && put.sketch_east_m === 50);
});

test("the picture holds every fence and its circle, north up, and taps find the nearest", () => {
  const spots = new Map([["a", { x: -200, y: 0, accuracy_m: 8 }], ["b", { x: 200, y: 90, accuracy_m: null }]]);
  const drawing = draw([...spots.values()], 328);
  for (const spot of spots.values()) {
    const { x, y } = drawing.at(spot);
    assert.ok(x >= 36 && x <= 292 + 1 && y >= 0 && y <= drawing.height);
    const back = drawing.back({ x, y });
    near(back.x, spot.x, 1e-6);
    near(back.y, spot.y, 1e-6);
  }
  assert.ok(drawing.at(spots.get("b")!).y < drawing.at(spots.get("a")!).y);
  const a = drawing.at(spots.get("a")!);
  assert.equal(nearest(spots, drawing, { x: a.x + 20, y: a.y }, 32), "a");
  assert.equal(nearest(spots, drawing, { x: a.x + 60, y: a.y }, 32), null);
});

test("one fence alone still has a field around it, and none at all too", () => {
  assert.ok(draw([{ x: 0, y: 0, accuracy_m: null }], 328).scale <= 328 / 60);
  assert.ok(Number.isFinite(draw([], 328).scale));
});

test("the scale bar is a round length in the person's units", () => {
  assert.deepEqual([130, 99, 50, 19.9, 9].map((most) => roundLength(most, "metric")), [100, 50, 50, 10, 5]);
  near(roundLength(130, "imperial"), 100 * 0.9144, 1e-9);
  near(roundLength(50, "imperial"), 50 * 0.9144, 1e-9);
});

const fix = (latitude: number, longitude: number, accuracy_m: number) => ({ latitude, longitude, accuracy_m, at_ms: 0 });

test("the mean of fixes is weighted by what each is worth", () => {
  // 1/4² against 1/8²: the finer counts four times; the worked example is ours
  const found = average([fix(51.5, -1.25, 4), fix(51.5001, -1.25, 8)])!;
  near(found.latitude, 51.50002, 1e-7);
  assert.equal(found.fixes, 2);
});

test("standing longer never makes the phone better than its finest fix", () => {
  const found = average(Array.from({ length: 20 }, () => fix(51.5, -1.25, 6)))!;
  assert.equal(found.position_accuracy_m, 6);
});

test("fixes that wander say so: the radius grows with their scatter", () => {
  const wandering = [0, 0.0002, -0.0002, 0.0002, -0.0002].map((by) => fix(51.5 + by, -1.25, 5));
  assert.ok(average(wandering)!.position_accuracy_m > 30);
});

test("a coarse first fix from the masts is left out, and none at all is no position", () => {
  const found = average([fix(51.6, -1.25, 1200), fix(51.5, -1.25, 9), fix(51.5, -1.25, 7)])!;
  assert.deepEqual([found.latitude, found.fixes, found.position_accuracy_m], [51.5, 2, 7]);
  assert.equal(average([]), null);
});

test("the nearest fence comes first, by what is known of where it stands; the others last in their order", () => {
  const fences = [at("unknown", {}), at("far", { latitude: 45.002, longitude: 7 }), at("near", { latitude: 45.0001, longitude: 7 }), at("nowhere", {})];
  const metres = metresTo(fences, { latitude: 45, longitude: 7 });
  near(metres.get("far")!, 0.002 * NORTH_M, 0.1);
  assert.deepEqual(nearestFirst(fences, metres).map(({ record_id }) => record_id), ["near", "far", "unknown", "nowhere"]);
});

test("where no phone has located any fence, nothing is nearest", () => {
  const fences = [at("a", { sketch_east_m: 0, sketch_north_m: 0 }), at("b", { sketch_east_m: 50, sketch_north_m: 0 })];
  assert.deepEqual(nearestFirst(fences, metresTo(fences, { latitude: 45, longitude: 7 })), fences);
});
