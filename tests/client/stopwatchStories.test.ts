// Thousands of random rides. What must hold in each: the time is true to 10 ms (the stopwatch's own error)
// whenever the clocks leave no doubt; where a doubt is left, the result is marked, never silent.

import assert from "node:assert/strict";
import { it } from "node:test";
import { judge } from "../../webclient/src/pace/judge.ts";
import { otherReadings } from "../../webclient/src/pace/plausible.ts";
import { pressSplit, pressStart, pressStop, READY, tick, type Watch } from "../../webclient/src/pace/run.ts";
import { FakePhone, PLAN, seeded } from "./fakePhone.ts";

interface Story {
  phone: FakePhone;
  watch: Watch;
  random: () => number;
  told: string[];
  /** What no clock of a page can tell happened: the wall clock moved out of sight. */
  unseen_ms: number;
  napped: boolean;
  stepped: boolean;
}

type Deed = (story: Story) => void;

const between = (story: Story, low: number, high: number): number => low + Math.floor(story.random() * (high - low));

function pass(story: Story, ms: number, every: number): void {
  for (let left = ms; left > 0; left -= every) {
    story.phone.awake(Math.min(every, left));
    story.watch = tick(story.watch, story.phone.sample());
  }
}

function setVisible(story: Story, visible: boolean): void {
  story.phone.visible = visible;
  story.watch = tick(story.watch, story.phone.sample());
}

function hiddenFor(story: Story, what: () => void): void {
  setVisible(story, false);
  what();
  setVisible(story, true);
}

const DEEDS: Record<string, Deed> = {
  canter: (story) => pass(story, between(story, 100, 20_000), 500),
  canterThrottled: (story) => hiddenFor(story, () => pass(story, between(story, 1_000, 180_000), 60_000)),
  blocked: (story) => story.phone.awake(between(story, 100, 8_000)),
  sleep: (story) => hiddenFor(story, () => {
    pass(story, between(story, 0, 5_000), 1_000);
    story.phone.asleep(between(story, 300, 120_000));
    story.napped = true;
  }),
  sleepUntold: (story) => {
    pass(story, 500, 500);
    story.phone.awake(between(story, 3_500, 9_000));
    story.phone.asleep(between(story, 300, 60_000));
    story.watch = tick(story.watch, story.phone.sample());
    story.napped = true;
  },
  changeSeen: (story) => {
    pass(story, 500, 500);
    story.phone.changeWall(between(story, 300, 7_200_000) * (story.random() < 0.5 ? -1 : 1));
    pass(story, 500, 500);
    story.stepped = true;
  },
  changeUnseen: (story) => hiddenFor(story, () => {
    const step = between(story, 300, 60_000) * (story.random() < 0.5 ? -1 : 1);
    story.phone.changeWall(step);
    story.unseen_ms += Math.abs(step);
  }),
  die: (story) => {
    story.phone.newLife(between(story, 50, 90_000));
    story.watch = tick(story.watch, story.phone.sample());
  },
  doubleStart: (story) => {
    story.watch = pressStart(story.watch, "another", PLAN, story.phone.sample());
  },
  split: (story) => {
    story.watch = pressSplit(story.watch, story.phone.sample());
  },
};

function tell(seed: number, allowed: string[]): Story {
  const random = seeded(seed);
  const phone = new FakePhone();
  const story: Story = { phone, watch: READY, random, told: [], unseen_ms: 0, napped: false, stepped: false };
  story.watch = pressStart(story.watch, "run", PLAN, phone.sample());
  for (let left = between(story, 1, 12); left > 0; left -= 1) {
    const deed = allowed[between(story, 0, allowed.length)] as string;
    story.told.push(deed);
    (DEEDS[deed] as Deed)(story);
  }
  pass(story, 600, 500);
  story.watch = pressStop(story.watch, phone.sample());
  return story;
}

function result(story: Story) {
  assert.equal(story.watch.phase, "stopped", story.told.join(" "));
  const run = (story.watch as Extract<Watch, { phase: "stopped" }>).run;
  return { run, judged: judge(run.trace) };
}

const KNOWABLE = Object.keys(DEEDS).filter((name) => name !== "changeUnseen");

it("2,000 rides whose truth can be known are right to 10 ms, and rightly marked", () => {
  for (let seed = 1; seed <= 2000; seed += 1) {
    const story = tell(seed, KNOWABLE);
    const { run, judged } = result(story);
    const story_text = `seed ${seed}: ${story.told.join(" ")}`;
    assert.ok(Math.abs(judged.elapsed_ms - story.phone.true_ms) <= 10, `${story_text}: ${judged.elapsed_ms} not ${story.phone.true_ms}`);
    const mark = story.told.includes("die") ? "restored" : story.napped ? "slept" : story.stepped ? "wall_changed" : "agree";
    assert.equal(judged.clock, mark, story_text);
    assert.ok(judged.sure, story_text);
    assert.equal(run.id, "run", "a second start took the run over");
  }
});

it("2,000 rides with a clock moved out of sight are never silently wrong", () => {
  let wrong = 0;
  for (let seed = 1; seed <= 2000; seed += 1) {
    const story = tell(seed, ["canter", "blocked", "changeUnseen", "split"]);
    const { judged } = result(story);
    const error = Math.abs(judged.elapsed_ms - story.phone.true_ms);
    if (error <= 10) continue;
    wrong += 1;
    assert.notEqual(judged.clock, "agree", `seed ${seed}: ${story.told.join(" ")}`);
    const offered = otherReadings(judged).map((one) => Math.abs(one.elapsed_ms - story.phone.true_ms));
    assert.ok(!judged.sure || Math.min(...offered) <= 10, `seed ${seed}: the true time is neither taken nor offered`);
  }
  assert.ok(wrong > 100, "the stories must really contain what cannot be known");
});

it("splits never run backwards and never pass the end", () => {
  for (let seed = 1; seed <= 500; seed += 1) {
    const { run, judged } = result(tell(seed, KNOWABLE));
    const sorted = [...run.splits_ms].sort((one, other) => one - other);
    assert.deepEqual(run.splits_ms, sorted);
    for (const split of run.splits_ms) assert.ok(split >= 0 && split <= judged.elapsed_ms + 10);
  }
});

it("the kept chain stays short however long the run", () => {
  const story = tell(7, ["canter", "canterThrottled"]);
  pass(story, 0, 1);
  const { run } = result(story);
  assert.ok(run.trace.stretches.length < 40);
});
