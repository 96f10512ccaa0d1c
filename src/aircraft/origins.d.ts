import type { Origins } from "./description.js";
/** Origin of a number by the longest matching path. */
export declare function originOf(origins: Origins, path: string): string;
