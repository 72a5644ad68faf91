/**
 * A function of an object, worked out the first time and kept as long as the object itself lives. The object must not
 * change afterwards.
 */
export function once<K extends object, V extends object | string | number>(make: (key: K) => V): (key: K) => V {
  const kept = new WeakMap<K, V>();
  return (key) => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    const value = make(key);
    kept.set(key, value);
    return value;
  };
}
