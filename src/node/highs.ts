import highsLoader from "highs";
import { highsSolver } from "../index.js";

/** The package describes its CommonJS form alone, where the loader is a property; imported, it is the default itself. */
const load = highsLoader as unknown as typeof highsLoader.default;

/** HiGHS in WebAssembly, from the package. */
export const solveMilp = highsSolver(() => load());
