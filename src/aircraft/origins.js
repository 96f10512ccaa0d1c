/** Origin of a number by the longest matching path. */
export function originOf(origins, path) {
    for (let key = path; key !== ""; key = key.slice(0, Math.max(0, key.lastIndexOf(".")))) {
        if (origins[key] !== undefined)
            return origins[key];
    }
    return origins[""] ?? "no origin given";
}
//# sourceMappingURL=origins.js.map