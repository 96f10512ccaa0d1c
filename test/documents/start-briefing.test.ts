import { describe, expect, test } from "vitest";
import { awayFromDocument, type Outcome, planFromDocument } from "../../src/questions/index.js";
import { english } from "../../src/words/index.js";
import { plain } from "../starting/plain.js";
import { EXAMPLE, steady } from "./example-document.js";

function completed<T>(outcome: Outcome<T>): T {
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

const document = (air_c: number, initial: object) => ({
  ...EXAMPLE,
  hours: 18,
  initial,
  weather: {
    points: steady(-12, 18).map((point) => ({ ...point, air_c, dew_point_c: Math.min(45, air_c - 3) })),
  },
  ensemble: { members: 20, seed: 1 },
});

type Notes = {
  readonly notes: readonly { readonly topic: string; readonly text: Parameters<typeof plain>[0] }[];
};

function said({ notes }: Notes, topic: string): string {
  return notes.flatMap((note) => (note.topic === topic ? plain(note.text) : [])).join();
}

describe("the start briefing of a document", () => {
  test("speaks of the temperatures expected at departure, not of those now", () => {
    const { start_briefing, course } = completed(planFromDocument(document(-15, { all_c: -15 })));
    const s = course.time_h.indexOf(16);
    const oil = Math.round(course.parts.oil.p50_c[s]);
    expect(oil).toBeGreaterThan(-10);
    expect(said(start_briefing, "oil")).toContain(`at ${oil} °C`);
  });

  test("away from power it speaks of now", () => {
    const { start_briefing } = completed(awayFromDocument(document(-15, { all_c: 3 })));
    expect(said(start_briefing, "oil")).toContain("at 3 °C");
    const breather = start_briefing.notes.find((n) => n.topic === "breather");
    expect(breather?.cautions.map(english).join()).toMatch(/freezes in the breather/);
  });

  test.each([
    ["deepest cold", -75, { all_c: -75 }, /below its pour point/],
    ["hottest air", 60, { all_c: 60 }, /evaporates as on a warm day/],
    ["hottest oil", 0, { all_c: 20, oil_c: 250 }, /may take 0 to 1 s/],
    ["shut down in the deepest cold", -75, { shut_down_h_ago: 2 }, /battery at -6\d °C, .* may be frozen/],
    ["shut down in the hottest air", 60, { shut_down_h_ago: 2 }, /evaporates as on a warm day/],
  ])("takes what a document may say: %s", (_, air, initial, words) => {
    const { start_briefing } = completed(awayFromDocument(document(air, initial)));
    expect(start_briefing.notes.map((n) => plain(n.text)).join("\n")).toMatch(words);
  });
});
