import { en } from "./en.js";
export const nb = en;
