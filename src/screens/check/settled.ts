import { useEffect, useState } from "preact/hooks";

/** True once `key` has stood still for a while: so that nobody is corrected in mid-word. */
export function useSettled(key: string, milliseconds = 500): boolean {
  const [settled, setSettled] = useState(key);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(key), milliseconds);
    return () => clearTimeout(timer);
  }, [key, milliseconds]);
  return settled === key;
}
