import type { z } from "zod";
import type { DocumentIssue, Path } from "../../documents/index.js";

/** What a set-up says of how a probe is read, and what can be wrong with it. The reading itself is in `devices`. */
export interface ProbeProtocol<S extends z.ZodObject = z.ZodObject> {
  /** With a literal `kind`. */
  readonly schema: S;
  issues(via: z.infer<S>, path: Path): DocumentIssue[];
}

/** What a set-up says of how a switch is told and heard. The telling itself is in `devices`. */
export interface SwitchProtocol<S extends z.ZodObject = z.ZodObject> extends ProbeProtocol<S> {
  /** Whether somebody else switches off when this process dies; else the device must do so by itself. */
  readonly hasLastWill: boolean;
  /** The texts of the on command, in which the on-time may stand. */
  onTexts(via: z.infer<S>): readonly string[];
  /** False where off, or asking for the state, could put it on, so that it is best left alone. */
  canBeToldOff(via: z.infer<S>): boolean;
  /** Names of the secrets it needs, each the NAME of an environment variable SOAKLINE_SECRET_NAME. */
  secretNames(via: z.infer<S>): readonly string[];
  /** What commands it, by which no other switch may be commanded. */
  command(via: z.infer<S>): Channel;
  /** Where it tells its state, in the same way as no other. */
  state(via: z.infer<S>): Channel;
  /** What it listens to, or asks by, beside its command: none of it may command another switch. */
  beside(via: z.infer<S>): readonly Channel[];
}

interface Channel {
  /** Its place in `via`. */
  readonly path: Path;
  /** Two channels are the same when their texts are. */
  readonly text: string;
  /** Without what may hold secrets; the text where left out. */
  readonly shown?: string;
}
