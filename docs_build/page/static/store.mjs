/** Small things the device remembers: typed values, last answers, the unit system. */

const PREFIX = "handbook.";

/** Read a remembered value, or undefined. */
export function recall(key) {
  try {
    const text = localStorage.getItem(PREFIX + key);
    return text === null ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Remember a value; false where the device does not let us. */
export function remember(key, value) {
  try {
    localStorage.setItem(PREFIX + key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/** Forget a value. */
export function forget(key) {
  try {
    localStorage.removeItem(PREFIX + key);
  } catch {
    // No storage, nothing to forget.
  }
}
