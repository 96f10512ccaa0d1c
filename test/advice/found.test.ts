import { describe, expect, test } from "vitest";
import { english } from "../../src/words/index.js";
import { adviceOf, airOf, night, planOf, wantIn } from "./example-night.js";
import { isoAt } from "./made-scenarios.js";
import { brokenRules } from "./rules.js";

// What the random cases found, each as one night that anybody can read.

describe("heat that is on", () => {
  const pad = {
    kit: { heaters: ["sump-pad-300"], covers: ["insulated-cover"] },
    plugged_in: ["sump-pad-300"],
  };

  test("too long goes off, and rests an hour before it goes on again", () => {
    const advice = adviceOf(
      night({ ...pad, plugged_in_since: isoAt(-23), want: wantIn(3), weather: airOf(-32, 8) }),
    );
    expect(advice.plan.heating).toMatchObject({ on_h: 23, stays_on: false });
    expect(advice.plan.plug_in?.at_h).toBeGreaterThanOrEqual(1);
    expect(brokenRules(advice)).toEqual([]);
  });

  test("and too big for the engine goes off, whether it was wanted or not", () => {
    const kit = { heaters: ["ducted-fuel-12000", "sump-pad-300"], covers: [] };
    const advice = adviceOf(
      night({
        ...{ aircraft: "two-light-60", kit, fitted: { covers: [] }, plugged_in: ["ducted-fuel-12000"] },
        want: wantIn(1.5, { heaters: ["sump-pad-300"] }),
      }),
    );
    expect(advice.plan.heating?.stays_on).toBe(false);
    expect(advice.plan.barred).toMatchObject([{ id: "ducted-fuel-12000", reason: "engine-too-small" }]);
    expect(brokenRules(advice)).toEqual([]);
  });

  test("but is not in the wish is listed, with who must stay and with its cautions", () => {
    const kit = { heaters: ["ducted-fuel-12000", "sump-pad-300"], covers: [] };
    const advice = adviceOf(
      night({
        ...{ aircraft: "six-injected-300", kit, fitted: { covers: [] }, weather: airOf(-5) },
        ...{ plugged_in: ["ducted-fuel-12000"], plugged_in_since: isoAt(-0.5) },
        want: wantIn(1, { heaters: ["sump-pad-300"] }),
      }),
    );
    expect(advice.plan.heating?.stays_on).toBe(true);
    expect(advice.plan.heaters.find(({ id }) => id === "ducted-fuel-12000")?.attended).toBe(true);
    expect(advice.plan.cautions.map(english).join()).toMatch(/carbon monoxide/);
    // The makers' pause, though the wish has less of it.
    expect(advice.plan.departure.at_h - advice.plan.unplug.at_h).toBeGreaterThanOrEqual(5 / 60 - 1e-3);
    expect(brokenRules(advice)).toEqual([]);
  });

  test("by hand for some minutes only makes nothing ready", () => {
    const advice = adviceOf(
      night({
        ...{ kit: { heaters: ["ducted-electric-1500"], covers: [] }, fitted: { covers: [] } },
        ...{ plugged_in: ["ducted-electric-1500"], plugged_in_since: isoAt(-0.1), want: wantIn(0.4) },
      }),
    );
    expect(advice.plan).toMatchObject({ status: "not-reachable", heating: { stays_on: false } });
    expect(brokenRules(advice)).toEqual([]);
  });
});

describe("what others do", () => {
  test("a plug-in that somebody's unplugging would cut short is not planned", () => {
    const events = [{ at_h: 7, do: "unplug" as const, heaters: ["whole-engine-4"] }];
    const advice = adviceOf(night({ events }));
    expect(advice.plan.plug_in?.at_h).toBeGreaterThanOrEqual(7);
    expect(brokenRules(advice)).toEqual([]);
  });

  test("an engine that somebody heats is ready, not past the limit without heat", () => {
    const events = [{ at_h: 1, do: "plug_in" as const, heaters: ["whole-engine-4"] }];
    const advice = adviceOf(night({ events, want: wantIn(8, { heaters: [] }) }));
    expect(advice.plan).toMatchObject({ status: "ready", heat_needed: true, plug_in: null });
    expect(advice.plan.happenings).toContainEqual(
      expect.objectContaining({ do: "unplug", at_h: advice.plan.unplug.at_h }),
    );
    expect(brokenRules(advice)).toEqual([]);
  });
});

test("a cover that would help a heater by hand still needs somebody there", () => {
  const { remedies } = planOf(
    night({
      ...{ kit: { heaters: ["ducted-electric-1500"], covers: [] }, fitted: { covers: [] } },
      ...{ aircraft: "six-injected-300", weather: airOf(-22, 8) },
    }),
  );
  const covers = remedies.filter(({ text }) => /put on now/.test(english(text)));
  expect(covers.length).toBeGreaterThan(0);
  expect(covers.every(({ attended }) => attended)).toBe(true);
});

test("a departure sooner than the makers' pause is answered, not thrown at", () => {
  const kit = { heaters: ["ducted-electric-1500"], covers: ["insulated-cover"] };
  const want = wantIn(0.05, { unplug_before_min: 0, cover_off_before_min: 0 });
  expect(planOf(night({ kit, want })).status).toBe("not-reachable");
});

test("a wall hotter than 200 °C is planned around, not thrown at", () => {
  const kit = { heaters: ["sump-pad-300", "whole-engine-2"], covers: [] };
  const plan = planOf(
    night({
      ...{ aircraft: "two-light-60", kit, fitted: { covers: [] }, weather: airOf(-8, 0.5) },
      ...{ plugged_in: ["sump-pad-300", "whole-engine-2"], plugged_in_since: isoAt(-3) },
    }),
  );
  expect(plan.too_hot.length).toBeGreaterThan(0);
  expect(plan.status).toBe("not-reachable");
});
