import {
  type CaseMoisture,
  caseGeometry,
  caseMoisture,
  type PartCourse,
  WATER_IN_OIL_WINTER,
} from "../starting/index.js";

/** Air outside at the samples of a stretch. */
export interface Outside {
  readonly tempAir: Float64Array;
  readonly tempDewPoint: Float64Array;
}

const WET_PARTS = ["oil", "crankcase", "crankshaft", "barrels"] as const;
/** [s] longest step of the water's balance in a winter; what it costs against a minute is in docs/winter.md. */
const WATER_STEP = 3600;
const EXACT_WATER_STEP = 60;

/** [s] that an inner wall was wet or frosted, and of those frosted. */
interface Wet {
  readonly wet: number;
  readonly frosted: number;
}

/** What was found of the water between two flights. */
export interface WaterFound {
  /** [s] since the start. */
  readonly from: number;
  readonly moisture: CaseMoisture;
  /** Of the wall that was wet longest since the start. */
  readonly worst: Wet;
}

/** The water in the middle aircraft's case, followed from flight to flight. */
export class WaterTally {
  private readonly geometry;
  private readonly rows: readonly number[];
  private readonly step: number;
  private readonly byWall = new Map<string, Wet>();
  private course = emptyCourse();

  constructor(
    installation: Parameters<typeof caseGeometry>[0],
    parts: readonly string[],
    private readonly members: number,
    isExact: boolean,
  ) {
    this.geometry = caseGeometry(installation);
    this.rows = WET_PARTS.map((part) => parts.indexOf(part));
    this.step = isExact ? EXACT_WATER_STEP : WATER_STEP;
  }

  /** Keeps sample s of a stretch, whose temperatures stand from `at` on; a stretch begins where the one before ended. */
  keep(times: Float64Array, s: number, samples: Float64Array, at: number, outside: Outside): void {
    const { course } = this;
    if (s === 0 && course.time.length > 0) return;
    course.time.push(times[s]!);
    for (const i of this.rows) course.temps.push(samples[at + i * this.members]!);
    course.air.push(outside.tempAir[s]!);
    course.dew.push(outside.tempDewPoint[s]!);
  }

  /** The water's balance over what was kept since the last flight, then afresh; undefined where nothing was. */
  take(): WaterFound | undefined {
    const { time, temps, air, dew } = this.course;
    this.course = emptyCourse();
    if (time.length <= 1) return undefined;
    const along: PartCourse = { time, parts: WET_PARTS, members: 1, temps };
    const outside = { tempAir: air, tempDewPoint: dew };
    const water = { inOil: WATER_IN_OIL_WINTER * this.geometry.oilMass, onSurfaces: 0 };
    const moisture = caseMoisture(this.geometry, along, outside, water, 0, this.step);
    for (const [wall, wet] of moisture.wetTime) {
      const before = this.byWall.get(wall) ?? { wet: 0, frosted: 0 };
      const frosted = moisture.frostTime.get(wall)!;
      this.byWall.set(wall, {
        wet: before.wet + wet[wet.length - 1]!,
        frosted: before.frosted + frosted[frosted.length - 1]!,
      });
    }
    const worst = [...this.byWall.values()].reduce((most, wall) => (wall.wet > most.wet ? wall : most));
    return { from: time[0]!, moisture, worst };
  }
}

function emptyCourse(): { time: number[]; temps: number[]; air: number[]; dew: number[] } {
  return { time: [], temps: [], air: [], dew: [] };
}
