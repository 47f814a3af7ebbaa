/**
 * A promise under a name that says what to do: a notebook cell that forgets `await` is told that something "does not exist on type
 * NeedsAwait".
 */
// eslint-disable-next-line @typescript-eslint/no-empty-object-type -- the name is the purpose
export interface NeedsAwait<Value> extends Promise<Value> {}
