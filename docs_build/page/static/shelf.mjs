/**
 * One shelf of an IndexedDB: returns the function that runs a step in a transaction on it. Where
 * the browser takes the database away from under the page, `lost` is called.
 */
export function shelf(database, name, options, lost = () => {}) {
  let opened;
  function open() {
    opened ??= new Promise((resolve, reject) => {
      const request = indexedDB.open(database, 1);
      request.onupgradeneeded = () => request.result.createObjectStore(name, options);
      request.onsuccess = () => {
        request.result.onclose = request.result.onversionchange = ({ type }) => {
          request.result.close();
          opened = undefined;
          if (type === "close") lost();
        };
        resolve(request.result);
      };
      request.onerror = () => reject(request.error);
      request.onblocked = () => reject(new Error("database blocked"));
    });
    opened.catch(() => (opened = undefined));
    return opened;
  }

  /** Run one step; resolves, when it is on the device, to what the step has given. */
  return async function inside(mode, step) {
    const transaction = (await open()).transaction(name, mode, { durability: "strict" });
    return new Promise((resolve, reject) => {
      let told;
      step(transaction.objectStore(name), (result) => (told = result));
      transaction.oncomplete = () => resolve(told);
      transaction.onabort = () => reject(transaction.error ?? new Error("not stored"));
      // A browser that takes the database away ends a transaction with this event alone.
      transaction.onerror = ({ target }) => reject(target.error);
    });
  };
}
