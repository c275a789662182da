// One tab at a time, where the browser can tell tabs apart; elsewhere each works for itself, which costs the network
// something and nothing else.

const patience = 90_000; // ms for a tab that may have been put to sleep in the middle of its work

export async function alone<T>(name: string, work: () => Promise<T>): Promise<T> {
  if (!("locks" in navigator)) return work();
  const giveUp = new AbortController();
  const timer = setTimeout(() => giveUp.abort(), patience);
  let begun = false;
  const begin = (): Promise<T> => {
    begun = true;
    clearTimeout(timer);
    return work();
  };
  try {
    return await navigator.locks.request(name, { signal: giveUp.signal }, begin);
  } catch (error) {
    if (begun) throw error;
    return work(); // refused, or waited for long enough
  } finally {
    clearTimeout(timer);
  }
}
