import { expect, test } from "vitest";
import { demoOpening } from "../../src/base/index.js";
import { eventSchema, readBaseSetUp } from "../../src/logbook/index.js";
import { HOUR, OPENED } from "./example-base.js";

test("the demo base is a valid, invented base whose night lies ahead, at whatever hour it is opened", () => {
  for (let hour = 0; hour < 24; hour += 1) {
    const now = OPENED + hour * HOUR;
    const { setUp, events } = demoOpening(now);
    expect(readBaseSetUp(setUp)).toMatchObject({ ok: true });
    for (const event of events) expect(eventSchema.parse(event)).toEqual(event);
    expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
    const departures = events.flatMap((e) =>
      e.kind === "departure-wanted" ? [Date.parse(e.departure)] : [],
    );
    expect(departures.length).toBe(4);
    expect(Math.min(...departures)).toBeGreaterThanOrEqual(now + 5 * HOUR);
    expect(Math.max(...departures)).toBeLessThan(now + 33 * HOUR);
    expect(setUp.notice).toMatch(/Invented/);
  }
  expect(demoOpening(OPENED)).toEqual(demoOpening(OPENED));
});
