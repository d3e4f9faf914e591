/** Small things of the device: what it remembers (typed values, last answers, units), its buzz. */

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
  const put = () => localStorage.setItem(PREFIX + key, JSON.stringify(value));
  try {
    put();
    return true;
  } catch {
    // Full, perhaps: what was typed comes before answers, which can be computed again.
  }
  try {
    for (const each of Object.keys(localStorage)) {
      if (each.startsWith(`${PREFIX}answer.`)) localStorage.removeItem(each);
    }
    put();
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

/** Vibrate; a browser allows it only on a page that was touched. */
export function buzz(pattern) {
  if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.(pattern);
}
