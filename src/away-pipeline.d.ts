import { type AwayDocument } from "./documents/index.js";
import { type Outcome, type PipelineOptions } from "./pipeline.js";
/** Away from power: whether it starts at the return the document wants, how long it stays ready, what would bridge the gap. */
export declare function awayFromDocument(source: unknown, options?: PipelineOptions): Outcome<AwayDocument>;
